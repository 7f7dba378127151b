import { factsOf, guideLines, stepsOf } from '../guideOf.ts';
import { type Draft, type Operator, type Spot, word } from '../mutant.ts';
import { linesIn, type Project } from '../project.ts';

/** Lines of the guide and the settings that name a file. */
function namedAt(project: Project, file: string): Spot[] {
  const base = file.split('/').at(-1) ?? file;
  const settings = typeof project.files.get('twicebuilt.yaml') === 'string' ? ['twicebuilt.yaml'] : [];
  const inGuide = guideLines(project).filter(
    ({ words }) => words.includes(file) || words.includes(`/${base})`) || words.includes(`(${base} `),
  );
  const inSettings = settings.flatMap((one) =>
    linesIn(project, one).flatMap((words, index) => (words.includes(file) ? [{ file: one, line: index + 1 }] : [])),
  );
  return [...inGuide, ...inSettings];
}

/** The file that a step loads has another name on the disk. */
export const codeRenamed: Operator = (project) =>
  loaded(project).flatMap(({ fact, file }): Draft[] =>
    [file.replace(/(\.\w+)$/, '_v2$1'), file.replace(/(\.\w+)$/, ' copy$1')].map((renamed) => ({
      title: `${file} is ${renamed} on the disk`,
      changes: [{ file, renamed }],
      at: [fact],
      reaches: namedAt(project, file),
      why: 'A builder does not find what to load.',
    })),
  );

function loaded(project: Project): { fact: Spot & { words: string }; file: string }[] {
  return stepsOf(project).flatMap((step) =>
    factsOf(step, 'code').flatMap((fact) => {
      const file = fact.value.replace(/ →.*$/, '');
      return project.files.has(file) ? [{ fact, file }] : [];
    }),
  );
}

/** A file that the settings give a role to has another name on the disk. */
export const roleFileRenamed: Operator = (project) => {
  const settings = project.files.get('twicebuilt.yaml');
  if (typeof settings !== 'string') return [];
  const candidates = [project.parts, project.tools, project.wiring, ...project.guide].filter(
    (file) => !file.endsWith('.md'),
  );
  const licences = [...project.files.keys()].filter((file) => /LICEN[CS]E|COPYING|^licences\//.test(file));
  return [...new Set([...candidates, ...licences])].flatMap((file): Draft[] => {
    const at = linesIn(project, 'twicebuilt.yaml').flatMap((words, index) =>
      words.includes(file) ? [{ file: 'twicebuilt.yaml', line: index + 1 }] : [],
    );
    if (at.length === 0) return [];
    const renamed = file.replace(/(?=\.\w+$)|$/, '-old');
    return [
      {
        title: `${file} is ${renamed} on the disk`,
        changes: [{ file, renamed }],
        at,
        reaches: [...guideLines(project), { file: renamed, line: 1 }],
        why: 'What the guide stands on is not in the folder any more.',
      },
    ];
  });
};

/** Capitals that only some disks forgive. */
export const caseChanged: Operator = (project) => {
  const inFacts = loaded(project).map(({ fact, file }) => ({ spot: fact, from: file, to: capitals(file) }));
  const pictures = guideLines(project).flatMap((spot) => {
    const from = /\]\(([^)\s]+\.(?:jpg|png))/.exec(spot.words)?.[1];
    return from === undefined ? [] : [{ spot, from, to: capitals(from) }];
  });
  const includes = project.code.flatMap((file) =>
    linesIn(project, file).flatMap((words, index) => {
      const from = /^#include "([^"]+)"/.exec(words)?.[1] ?? /^from (flag) import/.exec(words)?.[1];
      return from === undefined ? [] : [{ spot: { file, line: index + 1, words }, from, to: capitals(from) }];
    }),
  );
  return [...inFacts, ...pictures, ...includes].map(({ spot, from, to }) => ({
    title: `${from} is written ${to}`,
    changes: [word(spot.file, spot.line, spot.words.replace(from, to))],
    at: [spot],
    why: 'The file is not found on other machines.',
  }));
};

function capitals(file: string): string {
  const [, folder = '', name = ''] = /^(.*\/)?([^/]+)$/.exec(file) ?? [];
  return folder + (name === name.toLowerCase() ? (name[0] ?? '').toUpperCase() + name.slice(1) : name.toLowerCase());
}

/** A picture has another name on the disk. */
export const pictureRenamed: Operator = (project) =>
  [...project.files.keys()]
    .filter((file) => /\.(?:jpg|png)$/.test(file))
    .flatMap((file): Draft[] => {
      const at = namedAt(project, file);
      if (at.length === 0) return [];
      return [
        {
          title: `${file} has another name on the disk`,
          changes: [{ file, renamed: file.replace(/(\.\w+)$/, '-edited$1') }],
          at,
          why: 'A builder sees a gap where words were not enough.',
        },
      ];
    });

/** A licence of the settings is another one than the licence file says. */
export const licenceChanged: Operator = (project) =>
  lineIn(project, 'twicebuilt.yaml', /\b(?:code|text|hardware): /).flatMap(({ file, line, words }) =>
    [...words.matchAll(/\b(code|text|hardware): *([\w.-]+)/g)].map(([said = '', kind = '', id = '']) => ({
      title: `${kind} is under another licence in the settings`,
      changes: [word(file, line, words.replace(said, `${kind}: ${id === 'MIT' ? 'GPL-2.0-only' : 'MIT'}`))],
      at: [{ file, line }],
      reaches: [...project.files.keys()].map((one) => ({ file: one, line: 1 })),
      why: 'Nobody can tell what is allowed.',
    })),
  );

/** The revision of the settings, the guide or the code is an old one. */
export const revisionChanged: Operator = (project) => {
  const guide = project.guide.flatMap((file) => lineIn(project, file, /\brevision [A-Z\d][\d.]*/));
  const code = project.code.flatMap((file) => lineIn(project, file, /\brevision [A-Z\d][\d.]*|REVISION\[\] = /));
  const settings = [
    ...lineIn(project, 'twicebuilt.yaml', /^revision: /),
    ...project.guide.flatMap((file) => lineIn(project, file, /^revision: /)),
  ];
  const all = [...settings, ...guide, ...code];
  return all.flatMap(({ file, line, words }): Draft[] => {
    const to = words.replace(
      /((?:revision:? "?)|(?:REVISION\[\] = "))([A-Z\d][\d.]*)/,
      (_, head: string, old: string) => head + (/\d/.test(old) ? '0.9' : 'A'),
    );
    if (to === words) return [];
    return [
      {
        title: `${words.trim().slice(0, 50)} says another revision`,
        changes: [word(file, line, to)],
        at: [{ file, line }],
        reaches: all,
        why: 'A builder cannot tell which revision lies on the bench.',
      },
    ];
  });
};

function lineIn(project: Project, file: string, pattern: RegExp): (Spot & { words: string })[] {
  if (typeof project.files.get(file) !== 'string') return [];
  return linesIn(project, file).flatMap((words, index) =>
    pattern.test(words) ? [{ file, line: index + 1, words }] : [],
  );
}
