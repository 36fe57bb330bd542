import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { filesOf, ladder, largeSpaces, SPACES } from './spaces.ts';

/** Files in the folder of spaces, by their path from the root of the repository. */
function standing(): readonly string[] {
  if (!existsSync(SPACES)) return [];
  return readdirSync(SPACES, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath}/${entry.name}`);
}

/** Writes the generated spaces; leaves alone what is there already, takes away what is of no space. */
export function writeSpaces(): void {
  const files = new Map([...largeSpaces, ...ladder].flatMap((plan) => [...filesOf(plan)]));
  for (const path of standing()) if (!files.has(path)) rmSync(path);
  for (const [path, text] of files) {
    if (existsSync(path) && readFileSync(path, 'utf8') === text) continue;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
}

/** Writes the generated spaces and says where they are. */
export function tellSpaces(): void {
  writeSpaces();
  for (const { name, builds } of [...largeSpaces, ...ladder]) {
    console.log(`${SPACES}/${name}.yaml --catalog ${SPACES}/${name}-fans: ${builds.toExponential(1)} builds`);
  }
}
