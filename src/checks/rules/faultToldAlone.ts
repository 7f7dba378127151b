import { defineCheck } from '../defineCheck.ts';
import { declaresOutcome } from '../expectWords.ts';
import { stepName } from '../say.ts';
import { sentencesOfSection } from '../stepSentences.ts';

export const faultToldAlone = defineCheck({
  id: 'fault-told-alone',
  title: 'A test that tells what a fault looks like tells also what is there when all is well.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'No red light may mean that all is well, or that nothing runs at all.',
  basis: 'IEC/IEEE 82079-1 (in substance): instructions state the expected result',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const steps = judged.build.instructions.sections.filter(({ role }) => role === 'step');
    for (const section of steps) {
      if (!testing.test(section.heading) || declaresOutcome(judged, section.id)) continue;
      const sentences = sentencesOfSection(section);
      const fault = sentences.find(({ text }) => faulty.test(text));
      if (fault === undefined || sentences.some(({ text }) => success.test(text))) continue;
      const look = sentences.find(({ text }) => showing.test(text));
      yield {
        subjects: [`step:${section.id}`],
        sides: look === undefined || look === fault ? [fault.place, section.place] : [look.place, fault.place],
        basis: 'read',
        message: `The test ${stepName(judged.build, section.id)} tells what a fault looks like, and not what is there when all is well.`,
        consequence: 'A builder who sees neither the fault nor anything else cannot tell whether the build works.',
        remedy: 'Say what to see when it is right: which lights, words or values, and between which limits.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'both are told, or the result is declared',
        files: {
          'guide.md':
            '# Night light\n\n## Test the lamp\n\nPress the button. The lamp glows. If it stays dark, look at D1.\n\n## Test the switch\n\n- Expect: the dot is blue\n\nIf there is a red dot, look at S1.\n',
        },
      },
      {
        title: 'a test without a word of faults, and faults outside of tests',
        files: {
          'guide.md':
            '# Night light\n\n## Test the lamp\n\nPress the button twice. If there is no button, skip this.\n\n## Fit the lamp\n\nIf it stays dark, solder D1 again.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a red dot, and what else',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Testing the lamp\n\nOpen the page of the lamp. It shows the state of both sensors. If there is a red dot, look at the wires.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'not what is there' }],
      },
      {
        title: 'what to do when it does not turn',
        files: {
          'guide.md':
            '# Fan\n\n## Fit the motor\n\nSolder it.\n\n## Test the motor\n\nConnect the cell. If the motor does not turn, swap the leads.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘Test the motor’' }],
      },
    ],
  },
});

const testing = /\b(?:test|tests|testing|try|trying|verify|verifying)\b/iu;
const faulty =
  /\bif (?:there (?:is|are)|you (?:see|get)|it shows|the \p{L}+ shows)\b[^.,]*\b(?:red|errors?|faults?|warnings?|problems?)\b|\bif [^.,]*\b(?:fails?|failed|(?:stays?|remains?) (?:dark|off|silent)|nothing happens|(?:do|does)(?: not|n['’]t) (?:light|work|respond|show|appear|start|turn|blink|glow))\b/iu;
const success =
  /\b(?:should|must|green|expect(?:ed)?|success\w*|correct values?|all is well)\b|\bwill (?:light|glow|blink|flash|show|read|beep|say|print|turn|spin|move|display|appear|see|hear)\b|\b(?:it|they|lamp|light|led|display|screen|motor) (?:lights?|glows?|blinks?|flashes|beeps?|turns|spins|says|reads)\b|\bmeans (?:it|that it|everything|all)\b|\d ?(?:mV|V|mA|A|k?Ω|M?Ω|ohms?|°C|%|ppm|hPa)(?![\p{L}\d])/iu;
const showing =
  /\b(?:shows?|displays?|lists?|prints?)\b[^.]*?\b(?:data|status|state|readings?|values?|results?|measurements?)\b/iu;
