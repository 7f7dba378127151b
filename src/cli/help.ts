import type { Command } from './commands/command.ts';

/** The list of commands. */
export function overview(commands: readonly Command[]): string {
  const width = Math.max(...commands.map(({ name }) => name.length));
  const lines = commands.map(({ name, title }) => `  ${name.padEnd(width)}   ${title}`);
  return `Twicebuilt: documented well enough to be built twice.

twicebuilt COMMAND DIR …

${lines.join('\n')}

twicebuilt help COMMAND tells more about one of them.
Exit status: 0 done; 1 done, and something halts a builder; 2 could not be carried out.
`;
}

/** Everything about one command. */
export function helpOf(command: Command): string {
  const width = Math.max(0, ...command.options.map(({ flag }) => flag.length));
  const options = command.options.map(({ flag, meaning }) => `  ${flag.padEnd(width)}   ${meaning}`);
  const examples = command.examples.map((example) => `  twicebuilt ${example}`);
  return `twicebuilt ${command.name} ${command.usage}\n\n${command.about}\n\n${options.join('\n')}\n\nFor instance\n${examples.join('\n')}\n`;
}
