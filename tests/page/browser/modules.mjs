// What npm has installed, where tests/page.sh has it: outside the sources.
import {createRequire} from 'node:module';
import {join} from 'node:path';

if (!process.env.PAGE_MODULES) throw new Error('PAGE_MODULES is not set: run bash tests/page.sh');
export const installed = createRequire(join(process.env.PAGE_MODULES, 'package.json'));
