import type { BoothSetting, ReviewStep } from '../model/review-log.ts';

/** What a review has come to so far, beside what went into the document. */
export interface ReviewCourse {
  /** Id of the cabin that is reviewed. */
  readonly cabin: string;
  /** Ids of the joints that were looked at. */
  readonly seen: readonly string[];
  readonly steps: readonly ReviewStep[];
  readonly booth: BoothSetting;
}

const storedAs = 'adjoin-review';

/** Keeps the course of a review in this tab, for when the page is loaded anew; a browser that keeps nothing loses the running list and no more. */
export function keepReview(course: ReviewCourse): void {
  try {
    sessionStorage.setItem(storedAs, JSON.stringify(course));
  } catch {
    // What was taken stands in the document.
  }
}

/** The course of the review of a cabin that this tab kept. */
export function keptReview(cabin: string): ReviewCourse | undefined {
  try {
    const found = JSON.parse(sessionStorage.getItem(storedAs) ?? 'null') as ReviewCourse | null;
    return found?.cabin === cabin ? found : undefined;
  } catch {
    return undefined;
  }
}
