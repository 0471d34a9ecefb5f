import { describe, it } from 'vitest';
import { backupWhileEntering, killBackups } from '../kits/backupWhileEntering.ts';

describe('a back-up made while entries are made', () => {
  // Samples: test/nightly/backupWhileEntering.test.ts makes twenty and is killed fifty times.
  it('holds every act answered for before it was asked for, 2 of 2', () => backupWhileEntering(2));

  it('is whole or not there after a kill', () => killBackups(1));
});
