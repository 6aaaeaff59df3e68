import loadHighs from 'highs';
import type { Highs, ModelData } from 'highs';

/** Where the solver's WebAssembly is found, if not beside the code that loads it. */
export type LocateSolver = (file: string) => string;

let locate: LocateSolver | undefined;
let loading: Promise<Highs> | undefined;

/** Says where `highs.wasm` is, before the first plan is made: a bundle that moves it must say so. */
export function locateSolver(where: LocateSolver): void {
  locate = where;
  loading = undefined;
}

/** The solver, loaded once. */
export function highs(): Promise<Highs> {
  loading ??= loadHighs(locate === undefined ? {} : { locateFile: locate });
  return loading;
}

export interface ProgramOptions {
  /** Seconds of the solver's own clock; none where absent. */
  readonly timeLimitS?: number;
  /** Relative gap at which a mixed-integer program is taken as solved; 0 where absent. */
  readonly relativeGap?: number;
  /** Values to start from. */
  readonly start?: Float64Array;
}

export type ProgramStatus = 'optimal' | 'infeasible' | 'unbounded' | 'time limit' | 'failed';

export interface ProgramResult {
  readonly status: ProgramStatus;
  /** Values of the columns; undefined where no feasible point was found. */
  readonly values: Float64Array | undefined;
  readonly objective: number;
  /** No feasible point is better than this. */
  readonly bound: number;
}

/** Rows of a program, gathered one by one. */
export class ProgramRows {
  private readonly starts: number[] = [0];
  private readonly indices: number[] = [];
  private readonly values: number[] = [];
  private readonly lower: number[] = [];
  private readonly upper: number[] = [];

  /** low <= sum of values x columns <= high; returns the row's index. */
  add(low: number, high: number, columns: readonly number[], values: readonly number[]): number {
    this.indices.push(...columns);
    this.values.push(...values);
    this.starts.push(this.indices.length);
    this.lower.push(low);
    this.upper.push(high);
    return this.lower.length - 1;
  }

  get count(): number {
    return this.lower.length;
  }

  asModel(columns: number): Pick<ModelData, 'numRows' | 'rowLower' | 'rowUpper' | 'matrix'> {
    return {
      numRows: this.count, rowLower: Float64Array.from(this.lower), rowUpper: Float64Array.from(this.upper),
      matrix: {
        format: 'csr', numRows: this.count, numCols: columns,
        starts: Int32Array.from(this.starts), indices: Int32Array.from(this.indices), values: Float64Array.from(this.values),
      },
    };
  }
}

export interface Columns {
  readonly cost: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** 1 where a column must be a whole number. */
  readonly integer?: Int32Array;
}

/** Minimises a linear or mixed-integer program. Deterministic but for the time limit. */
export async function minimise(columns: Columns, rows: ProgramRows, options: ProgramOptions = {}): Promise<ProgramResult> {
  const solver = await highs();
  const count = columns.cost.length;
  const data: ModelData = {
    numCols: count, colCost: columns.cost, colLower: columns.lower, colUpper: columns.upper,
    ...rows.asModel(count),
    ...(columns.integer === undefined ? {} : { integrality: columns.integer }),
  };
  return solver.withModel(data, (model): ProgramResult => {
    // The feasibility jump takes longer than all the rest of a small program.
    model.options.set({ output_flag: false, mip_rel_gap: options.relativeGap ?? 0, mip_abs_gap: 1e-9, random_seed: 1, mip_heuristic_run_feasibility_jump: false });
    if (options.timeLimitS !== undefined) model.options.set('time_limit', options.timeLimitS);
    if (options.start !== undefined) model.setSolution({ colValue: options.start });
    const { modelStatus } = model.run();
    const known = solver.constants.modelStatus;
    const status: ProgramStatus = modelStatus === known.optimal || modelStatus === known.empty ? 'optimal'
      : modelStatus === known.infeasible ? 'infeasible'
        : modelStatus === known.unbounded || modelStatus === known.unboundedOrInfeasible ? 'unbounded'
          : modelStatus === known.timeLimit ? 'time limit' : 'failed';
    if (status !== 'optimal' && status !== 'time limit') return { status, values: undefined, objective: Infinity, bound: Infinity };
    const objective = model.getObjectiveValue();
    const mixed = columns.integer !== undefined;
    const bound = mixed ? Number(model.info.get('mip_dual_bound')) : status === 'optimal' ? objective : -Infinity;
    const feasible = Number(model.info.get('primal_solution_status')) === 2;
    return { status, values: feasible ? model.getSolution().colValue : undefined, objective: feasible ? objective : Infinity, bound };
  });
}
