import { counted } from '../../src/ground/words.ts';
import type { KnowledgeFault } from '../../src/knowledge/knowledgeFault.ts';

/** Prints every fault: file and line, entry, what is wrong, how to mend it, and an entry that is right. */
export function printFaults(faults: readonly KnowledgeFault[]): void {
  for (const fault of faults) {
    const entry = fault.entry === '' ? 'whole file' : fault.entry;
    console.log(`knowledge/${fault.file}:${fault.line}  ${entry} — ${fault.what} — ${fault.mend}`);
    for (const line of fault.example.split('\n')) console.log(`    right: ${line}`);
  }
  if (faults.length > 0) console.log(`\n${counted(faults.length, 'fault')} in the knowledge files.\n`);
}
