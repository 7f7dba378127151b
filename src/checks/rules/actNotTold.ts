import type { Judged } from '#core/assembled.ts';
import type { Section } from '#core/step.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';
import { isWrittenOut } from '../writtenGuide.ts';

export const actNotTold = defineCheck({
  id: 'act-not-told',
  title: 'A step tells its reader to do something.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A report of what was done reads like a guide to its writer alone.',
  basis: 'IEC/IEEE 82079-1, in substance: instructions address the reader and name the act',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    if (!isWrittenOut(judged.build)) return;
    for (const section of judged.build.instructions.sections) {
      const report = section.role === 'step' ? reportIn(judged, section) : null;
      if (report === null) continue;
      yield {
        subjects: [`step:${section.id}`],
        mark: 'no-act',
        sides: [report.place, section.place],
        basis: 'read',
        message: `The step ${stepName(judged.build, section.id)} tells what was done or can be done (‘${report.text.trim()}’), and has the builder do nothing.`,
        consequence: 'A builder has to guess what to do, in which order, and with what.',
        remedy: 'Write what to do, as to somebody at the bench: ‘Push it in from the front and solder its pins.’',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'instructions in several forms, facts, and a look at what is there',
        files: {
          'guide.md':
            '# Lamp\n\n## One\n\nNow the lamp can be fitted. Push it in.\n\n## Two\n\nYou need to solder the switch, which was bent.\n\n## Three\n\n- Parts: S1\n\nThe switch is fitted here.\n\n## Four\n\nThe lamp should be soldered now.\n\n## Five\n\nThe lamp glows. This is how it looks.\n',
          'parts.csv': 'Reference,Quantity,Description\nS1,1,Switch\n',
        },
      },
      {
        title: 'a page that has only begun',
        files: {
          'guide.md': '# Lamp\n\n## Steps\n\n### One\n\nSolder D1.\n\n### Two\n\nThe lamp can be soldered on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'what can be added',
        files: {
          'guide.md':
            '# Lamp\n\n## Steps\n\n### Fit the lamp\n\nSolder the lamp.\n\n### Fit the switch\n\nSolder the switch.\n\n### Dimmer\n\nA dimmer can be added on either side. I have also cleaned the board with alcohol.\n',
        },
        expect: [{ file: 'guide.md', line: 15, words: 'can be added' }],
      },
      {
        title: 'what the maker did',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit the lamp\n\nSolder the lamp.\n\n## Fit the switch\n\nSolder the switch.\n\n## Close it\n\nI glued the lid on with the last of the resin.\n',
        },
        expect: [{ file: 'guide.md', line: 13, words: 'I glued' }],
      },
    ],
  },
});

const report =
  /\b(?:can|could|may) (?:now |also |then |optionally )?be (?:added|fitted|mounted|installed|soldered|attached|connected|placed|assembled|glued|screwed)\b|\b(?:I|we)(?: have|['’]ve)?(?: also| then| now| just)? (?:added|fitted|mounted|installed|soldered|attached|connected|placed|assembled|glued|screwed|cleaned|taped|drilled|cut|wired|crimped|printed|put)\b/iu;
/** Other ways of telling somebody to do something. */
const tells =
  /\b(?:you|your|must|should|shall|need(?:s|ed)? to|has to|have to|let['’]?s|to be|it['’]s time|goes|belongs?|make sure|be (?:careful|gentle|sure))\b|\bhere (?:is|are)\b/iu;
const imperative =
  /^[^\p{L}]*(?:(?:now|then|next|first|finally|again|carefully|gently|also|please|and|once \S+|if [^,]+|when [^,]+|after [^,]+|before [^,]+|with [^,]+|to [^,]+|using [^,]+|on [^,]+|in [^,]+),?\s+)*(?:add|align|apply|arrange|assemble|attach|bend|bridge|bring|build|carry|change|check|choose|clean|click|clip|close|collect|compare|confirm|connect|copy|cover|crimp|cut|decide|disconnect|do|download|drill|drive|drop|enter|feed|file|fill|find|finish|fit|fix|flash|flip|fold|follow|get|give|glue|go|grab|heat|hold|identify|insert|inspect|install|join|keep|lay|leave|let|level|lift|line|load|locate|look|loosen|make|mark|match|measure|melt|mix|mount|move|note|open|paint|peel|pick|place|plug|position|pour|prepare|press|print|pull|push|put|read|remember|remove|repeat|replace|reflow|rotate|route|run|sand|screw|seat|secure|select|separate|set|shorten|show|slide|snap|solder|start|stick|strip|switch|take|tape|tear|test|thread|tidy|tie|tighten|tin|touch|trim|try|tuck|turn|twist|type|unplug|unscrew|upload|use|verify|wait|warm|wash|watch|weigh|wipe|wire|work|wrap|write)\b/iu;

/** The first sentence that reports, in a step where none tells to do anything. */
function reportIn({ facts }: Judged, section: Section) {
  if (section.facts.length > 0 || facts.actions.some(({ told, step }) => told === 'do' && step === section.id))
    return null;
  const sentences = sentencesIn(section);
  if (sentences.some(({ text }) => imperative.test(text) || tells.test(text))) return null;
  return sentences.find(({ text }) => report.test(text)) ?? null;
}
