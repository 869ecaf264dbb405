// The program run as a person runs it, and what was held told line by line.
import {spawnSync} from 'node:child_process';

export const coarse = '\n[mesh]\nrefinement = 0.5\nrim_elements = 32\n';

// Its output. Status 1 is a result too: of a construct that is not to be trusted, such as with a coarse mesh.
export function run(program, options) {
  const {status, stdout, stderr} = spawnSync(program, options, {encoding: 'utf8', maxBuffer: 1 << 28});
  if (status !== 0 && status !== 1) throw new Error(`gapstrain ${options.join(' ')}: ${status}\n${stderr}`);
  return stdout;
}

export const told = {
  faults: 0,
  that(holds, text) {
    if (!holds) ++told.faults;
    console.log(`${holds ? 'ok    ' : 'FAILED'} ${text}`);
  }
};
