/**
 * One finding as the model sees it: how probable its report is if the sign is truly there, and if it is not; and for how much
 * of a witness it counts, if the same was found on other parts (its likelihood is raised to that power).
 */
export type Report = { ifThere: number; ifNot: number; counts?: number };

/** How probable one report is where so large a share shows the sign. */
export function reportLikelihood(share: number, { ifThere, ifNot, counts }: Report): number {
  const single = share * ifThere + (1 - share) * ifNot;
  return counts === undefined ? single : single ** counts;
}

/**
 * How probable a group of reports is, when each sign shows with its own share and signs of one group may go together.
 *
 * With share `together` one hidden cause rules them all: a level u, even on 0–1, is drawn once and a sign shows if u is
 * below its share, so that each keeps its own share and the rarer never shows without the commoner. Otherwise they show
 * apart. A group of one is the same either way. The whole counts for as much of a witness as its reports do on the mean.
 *
 * @param shares    number[n], each sign's share in this state of its cause, 0–1
 * @param reports   Report[n], in the same order
 * @param together  0–1
 * @source ours: the comonotone coupling, the one that changes no single sign's share
 */
export function groupLikelihood(
  shares: readonly number[],
  reports: readonly Report[],
  together: number,
): number {
  if (shares.length < 2) return reports[0] === undefined ? 1 : reportLikelihood(shares[0] ?? 0, reports[0]);
  const apart = apartLikelihood(shares, reports);
  const single = together === 0 ? apart : together * asOne(shares, reports) + (1 - together) * apart;
  const counts = reports.reduce((sum, report) => sum + (report.counts ?? 1), 0) / reports.length;
  return counts === 1 ? single : single ** counts;
}

function apartLikelihood(shares: readonly number[], reports: readonly Report[]): number {
  let product = 1;
  for (let i = 0; i < shares.length; i++) product *= mixed(shares[i] ?? 0, reports[i]);
  return product;
}

function mixed(share: number, report: Report | undefined): number {
  return report === undefined ? 1 : share * report.ifThere + (1 - share) * report.ifNot;
}

function asOne(shares: readonly number[], reports: readonly Report[]): number {
  const levels = [...new Set([0, ...shares, 1])].sort((a, b) => a - b);
  let sum = 0;
  for (let k = 1; k < levels.length; k++) {
    const low = levels[k - 1] ?? 0;
    const high = levels[k] ?? 1;
    let product = high - low;
    for (let i = 0; i < shares.length; i++) {
      const report = reports[i];
      if (report !== undefined) product *= (shares[i] ?? 0) >= high ? report.ifThere : report.ifNot;
    }
    sum += product;
  }
  return sum;
}
