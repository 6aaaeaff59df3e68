/**
 * Three sets of data of O. L. Davies and P. L. Goldsmith (eds), Statistical Methods in Research and Production, 4th ed. (1972), sections 6.4 to 6.6, as the
 * library lme4 for R carries them (Dyestuff, Pastes, Penicillin), and the variance components that lme4 prints for them by restricted maximum likelihood,
 * which for balanced data with positive estimates are those of the analysis of variance (S. R. Searle et al., Variance Components, 1992, section 4.8).
 */

/** Yield of five preparations from each of six batches. lme4: batch 1764, residual 2451 (sd 42.00 and 49.51; value from memory). */
export const dyestuff = [
  [1545, 1440, 1440, 1520, 1580], [1540, 1555, 1490, 1560, 1495], [1595, 1550, 1605, 1510, 1560],
  [1445, 1440, 1595, 1465, 1545], [1595, 1630, 1515, 1635, 1625], [1520, 1455, 1450, 1480, 1445],
];

/** Strength of two assays of each of three casks of ten batches. lme4: cask in batch 8.434, batch 1.657, residual 0.678. */
export const pastes = [
  [[62.8, 62.6], [60.1, 62.3], [62.7, 63.1]], [[60, 61.4], [57.5, 56.9], [61.1, 58.9]], [[58.7, 57.5], [63.9, 63.1], [65.4, 63.7]],
  [[57.1, 56.4], [56.9, 58.6], [64.7, 64.5]], [[55.1, 55.1], [54.7, 54.2], [58.8, 57.5]], [[63.4, 64.9], [59.3, 58.1], [60.5, 60]],
  [[62.5, 62.6], [61, 58.7], [56.9, 57.7]], [[59.2, 59.4], [65.2, 66], [64.8, 64.1]], [[54.8, 54.8], [64, 64], [57.7, 56.8]],
  [[58.3, 59.3], [59.2, 59.2], [58.9, 56.6]],
];

/** Diameter, mm, for six samples on each of 24 plates. lme4: sd 0.8467 plate, 1.9316 sample, 0.5499 residual. */
export const penicillin = [
  '27 23 26 23 23 21', '27 23 26 23 23 21', '25 21 25 24 24 20', '26 23 25 23 23 20', '25 22 26 22 23 20', '24 22 25 23 22 19',
  '24 20 23 21 22 19', '26 22 26 24 24 21', '24 21 24 22 22 20', '24 21 24 23 22 19', '26 23 26 24 24 21', '25 22 26 24 24 20',
  '26 24 26 24 25 22', '26 23 26 23 23 20', '26 23 25 24 24 22', '25 22 25 23 23 20', '25 21 24 23 23 20', '25 22 24 23 23 19',
  '24 21 23 21 21 19', '26 23 26 24 24 21', '25 21 24 22 22 18', '25 22 25 22 22 20', '24 21 24 22 24 19', '24 21 24 22 21 18',
].map((row) => row.split(' ').map(Number));
