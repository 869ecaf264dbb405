// What holds and what does not, said as it is found.
export class Checks {
  constructor() {
    this.passed = 0;
    this.failed = 0;
    this.before = Date.now();
  }
  that(holds, what, why = '') {
    if (holds)
      ++this.passed;
    else
      ++this.failed;
    const took = (Date.now() - this.before) / 1000;
    this.before = Date.now();
    console.log(`${holds ? 'ok' : 'FAILED'} ${what}${took > 5 ? ` (after ${took.toFixed(0)} s)` : ''}${
        holds || !why ? '' : `: ${why}`}`);
  }
  equal(value, expected, what) {
    this.that(value === expected, what, `${JSON.stringify(value)}, not ${JSON.stringify(expected)}`);
  }
  none(list, what) {
    this.that(list.length === 0, what, list.slice(0, 5).join('; '));
  }
  report() {
    console.log(`${this.passed} passed, ${this.failed} failed`);
    return this.failed === 0 && this.passed > 0 ? 0 : 1;
  }
}
