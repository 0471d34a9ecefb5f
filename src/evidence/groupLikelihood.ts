/** One finding as the model sees it: how probable its report is if the sign is truly there, and if it is not. */
export type Report = { ifThere: number; ifNot: number };

/**
 * How probable a group of reports is, when each sign shows with its own share and signs of one group may go together.
 *
 * With share `together` one hidden cause rules them all: a level u, even on 0–1, is drawn once and a sign shows if u is
 * below its share, so that each keeps its own share and the rarer never shows without the commoner. Otherwise they show
 * apart. A group of one is the same either way.
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
  const apart = apartLikelihood(shares, reports);
  return shares.length < 2 || together === 0
    ? apart
    : together * asOne(shares, reports) + (1 - together) * apart;
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
