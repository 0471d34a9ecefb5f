import { describe, it } from 'vitest';
import { backupWhileEntering, killBackups } from '../kits/backupWhileEntering.ts';

describe('a back-up made while entries are made', () => {
  it('holds every act answered for before it was asked for, 20 of 20', () => backupWhileEntering(20));

  it('is whole or not there after each of 50 kills', () => killBackups(50));
});
