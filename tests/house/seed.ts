import fc from 'fast-check';

/**
 * Every run of the tests draws the same examples, so that a failure means a change and not a throw of the dice;
 * `SEED=7 npm test` throws them anew.
 */
fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 20_251) });
