import type { IsoDate, Matrix3 } from '../../quantities.ts';
import type { Agreement } from '../reading.ts';
import type { AgreementStudy } from './agreement-study.ts';

/**
 * The agreement of one instrument as the register keeps it, from a study of tiles; undefined where the study says nothing about it.
 * An instrument compared at several classes of geometry keeps the one with the most tiles (ties: the first); gloss at several angles gives
 * the largest standard deviation. Covariances shared with the other instruments stand beside it, so that the difference of two
 * instruments has the covariance that was seen on the tiles.
 */
export function agreementOf(study: AgreementStudy, instrument: string, date: IsoDate): Agreement | undefined {
  const colour = [...study.colour].sort((p, q) => q.tiles.length - p.tiles.length).find(({ instruments }) => instruments.some((own) => own.instrument === instrument));
  const gloss = study.gloss.filter(({ instruments }) => instruments.some((own) => own.instrument === instrument));
  const texture = study.texture?.instruments.find((own) => own.instrument === instrument);
  const tiles = Math.max(colour?.tiles.length ?? 0, ...gloss.map((angle) => angle.tiles.length), texture === undefined ? 0 : study.texture?.tiles.length ?? 0);
  if (tiles === 0) return undefined;
  const shared = (colour?.pairs ?? []).flatMap((pair): [string, Matrix3][] => (
    pair.first === instrument ? [[pair.second, pair.shared]] : pair.second === instrument ? [[pair.first, pair.shared]] : []
  ));
  const glossSds = gloss.flatMap(({ instruments }) => instruments.filter((own) => own.instrument === instrument).map(({ sd }) => sd));
  const covariance = colour?.instruments.find((own) => own.instrument === instrument)?.covariance;
  return {
    date, tiles,
    ...(covariance === undefined ? {} : { covariance }),
    ...(glossSds.length === 0 ? {} : { glossSd: Math.max(...glossSds) }),
    // The sd of a logarithm is the relative sd for small ones; the register takes none above 1.
    ...(texture === undefined ? {} : { textureRelativeSd: Math.min(1, texture.sd) }),
    ...(shared.length === 0 ? {} : { shared: Object.fromEntries(shared) }),
  };
}
