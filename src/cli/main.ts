import { Failure } from '#core/failure.ts';
import { UsageMistake } from './arguments.ts';
import { acceptCommand } from './commands/accept.ts';
import { adoptCommand } from './commands/adopt.ts';
import { cautionsCommand } from './commands/cautions.ts';
import { checkCommand } from './commands/check.ts';
import type { Command } from './commands/command.ts';
import { compareCommand } from './commands/compare.ts';
import { confirmCommand } from './commands/confirm.ts';
import { flattenCommand } from './commands/flatten.ts';
import { impactCommand } from './commands/impact.ts';
import { lookCommand } from './commands/look.ts';
import { partsCommand } from './commands/parts.ts';
import { pinsCommand } from './commands/pins.ts';
import { publishCommand } from './commands/publish.ts';
import { rehearseCommand } from './commands/rehearse.ts';
import { helpOf, overview } from './help.ts';
import { version } from './version.ts';

const commands: readonly Command[] = [
  adoptCommand,
  checkCommand,
  rehearseCommand,
  confirmCommand,
  acceptCommand,
  impactCommand,
  publishCommand,
  partsCommand,
  pinsCommand,
  cautionsCommand,
  lookCommand,
  compareCommand,
  flattenCommand,
];

/** Runs one command. Exit status 0: done; 1: done, and something halts a builder; 2: could not be carried out. */
export async function main(argv: readonly string[]): Promise<0 | 1 | 2> {
  // A reader such as `head` may close its end early; that is no mistake of anybody's.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(0);
  });
  const [name, ...rest] = argv;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') return showHelp(rest[0]);
  if (name === '--version') {
    process.stdout.write(`${version}\n`);
    return 0;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (command === undefined) {
    process.stderr.write(`There is no command “${name}”. These are the commands:\n\n${overview(commands)}`);
    return 2;
  }
  if (rest.includes('--help') || rest.includes('-h')) return showHelp(name);
  try {
    return await command.run(rest);
  } catch (error) {
    return explain(error, command);
  }
}

function showHelp(name: string | undefined): 0 | 2 {
  const command = commands.find((candidate) => candidate.name === name);
  if (name !== undefined && command === undefined) {
    process.stderr.write(`There is no command “${name}”.\n`);
    return 2;
  }
  process.stdout.write(command === undefined ? overview(commands) : helpOf(command));
  return 0;
}

function explain(error: unknown, command: Command): 2 {
  if (error instanceof UsageMistake) {
    process.stderr.write(`${error.message}\n\n${helpOf(command)}`);
  } else if (error instanceof Failure) {
    process.stderr.write(`${error.message}\n${error.hint}\n`);
  } else {
    process.stderr.write(`A mistake in Twicebuilt itself; your files are as they were.\n`);
    process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  }
  return 2;
}
