/** Long work that stops after every step: whoever asked for it has it go on, or drops it. */
export type Steps<Answer> = Generator<undefined, Answer, undefined>;

/** Goes on to the end at once. */
export function finished<Answer>(steps: Steps<Answer>): Answer {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same work on one thing after another, each a step. */
export function* stepByStep<Thing, Answer>(
  things: readonly Thing[],
  work: (thing: Thing) => Answer,
): Steps<Answer[]> {
  const answers: Answer[] = [];
  for (const thing of things) {
    answers.push(work(thing));
    yield;
  }
  return answers;
}
