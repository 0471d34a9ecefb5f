#!/usr/bin/env node
// `npm start`: installs what is missing, builds what is out of date, and opens the examination room.
var major = Number(process.versions.node.split('.')[0]);
if (major < 20 || major > 24) {
  console.error(
    'Underside runs on Node 20, 22 or 24, and this is Node ' +
      process.versions.node +
      ': install one of them from nodejs.org and start again.',
  );
  process.exitCode = 1;
} else {
  import('../scripts/startProgram.mjs').then((program) => program.startProgram(process.argv.slice(2)));
}
