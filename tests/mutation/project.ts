import { readProject } from '../projects/readProject.ts';

/** A build as its maker keeps it, with what operators must know: which file holds what. */
export interface Project {
  readonly name: string;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  readonly guide: readonly string[];
  readonly parts: string;
  readonly tools: string;
  readonly wiring: string;
  readonly code: readonly string[];
}

type Layout = Omit<Project, 'name' | 'files'>;

const layouts: Readonly<Record<string, Layout>> = {
  'tide-lamp': {
    guide: ['guide.md'],
    parts: 'parts.csv',
    tools: 'tools.csv',
    wiring: 'wiring.csv',
    code: ['firmware/pins.h', 'firmware/main.cpp', 'firmware/tide.h', 'firmware/platformio.ini'],
  },
  'dusk-blinker': {
    guide: ['blinker.md'],
    parts: 'parts.csv',
    tools: 'tools.csv',
    wiring: 'wires.csv',
    code: [],
  },
  'fan-box': {
    guide: ['README.md'],
    parts: 'bom.csv',
    tools: 'README.md',
    wiring: 'wires.csv',
    code: ['code/fanbox/fanbox.ino'],
  },
  'hello-flag': {
    guide: ['build-guide.md'],
    parts: 'build-guide.md',
    tools: 'build-guide.md',
    wiring: 'wiring.tsv',
    code: ['code/main.py', 'code/flag.py'],
  },
  'night-badge': {
    guide: ['guide.md'],
    parts: 'guide.md',
    tools: 'guide.md',
    wiring: 'guide.md',
    code: ['badge/badge.ino'],
  },
  'quick-finger': {
    guide: ['guide.md'],
    parts: 'parts.csv',
    tools: 'guide.md',
    wiring: 'guide.md',
    code: ['reaction/reaction.ino'],
  },
  'stale-air': {
    guide: ['guide.md'],
    parts: 'stueckliste.csv',
    tools: 'werkzeug.csv',
    wiring: 'verdrahtung.csv',
    code: ['firmware/src/main.cpp', 'firmware/platformio.ini'],
  },
  'tent-light': {
    guide: ['guide.md'],
    parts: 'parts.csv',
    tools: 'tools.csv',
    wiring: 'wiring.csv',
    code: ['code/tentlight.ino'],
  },
  'twin-pad': {
    guide: ['guide/1-overview.md', 'guide/2-halves.md', 'guide/3-joining.md', 'guide/4-code.md'],
    parts: 'guide/1-overview.md',
    tools: 'guide/1-overview.md',
    wiring: 'guide/matrix.csv',
    code: ['firmware/twinpad/twinpad.ino'],
  },
};

export const mutatedBuilds: readonly string[] = Object.keys(layouts);

export function openProject(name: string): Project {
  const layout = layouts[name];
  if (layout === undefined) throw new Error(`There is no build ${name}.`);
  return { name, files: readProject(name), ...layout };
}

/** The lines of a text file of the build, without their ends. */
export function linesIn(project: Project, file: string): string[] {
  const content = project.files.get(file);
  if (typeof content !== 'string') throw new Error(`${project.name}/${file} is no text.`);
  return content.split('\n');
}
