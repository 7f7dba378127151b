import type { Operator } from './mutant.ts';
import { cautionDropped, cautionMoved } from './operators/cautions.ts';
import * as code from './operators/code.ts';
import * as files from './operators/files.ts';
import * as parts from './operators/parts.ts';
import * as steps from './operators/steps.ts';
import * as wiring from './operators/wiring.ts';
import * as words from './operators/words.ts';

/** Faults of a tired maker, by what was done. */
export const operators: Readonly<Record<string, Operator>> = {
  'part row dropped': parts.partRowDropped,
  'quantity changed in the list': parts.quantityChanged,
  'length shrunk in the list': parts.lengthShrunk,
  'value changed in the list': parts.valueChanged,
  'unit changed in the list': parts.unitChanged,
  'values swapped in the list': parts.valuesSwapped,
  'renumbered in the list': parts.renumberedInList,
  'price changed': parts.priceChanged,
  'cost in the text outdated': parts.costOutdated,
  'rating dropped': parts.ratingDropped,
  'wire row dropped': wiring.wireRowDropped,
  'wire moved in the table': wiring.wireMoved,
  'wires crossed in the table': wiring.wiresCrossed,
  'colour changed in the table': wiring.colourChanged,
  'colour changed in the step': wiring.colourInStepChanged,
  'pin changed in a fact': wiring.pinInFactChanged,
  'pin changed in the prose': wiring.pinInProseChanged,
  'connection dropped from a step': wiring.joinDropped,
  'renumbered in a step': steps.renumberedInStep,
  'part dropped from a step': steps.partDroppedFromStep,
  'count changed in a step': steps.countInStepChanged,
  'step dropped': steps.stepDropped,
  'steps swapped': steps.stepsSwapped,
  'power left on': steps.powerLeftOn,
  'power never on': steps.powerNeverOn,
  'tool dropped from the list': steps.toolDropped,
  'tool dropped from a step': steps.toolDroppedFromStep,
  'reading changed': steps.readingChanged,
  'colour band changed': words.bandChanged,
  'value changed in the text': words.valueInTextChanged,
  'printed code changed': words.printedCodeChanged,
  'time outdated': words.timeOutdated,
  'time of a step changed': words.stepTimeChanged,
  'link broken': words.linkBroken,
  'heading renamed': words.headingRenamed,
  'way round dropped': words.orientationDropped,
  'pin changed in the code': code.pinInCodeChanged,
  'pin doubled in the code': code.pinDoubled,
  'pins swapped in the code': code.pinsSwapped,
  'library dropped': code.libraryDropped,
  'version dropped': code.versionDropped,
  'number changed in the code': code.numberInCodeChanged,
  'speed changed in the guide': code.speedInGuideChanged,
  'code renamed': files.codeRenamed,
  'file of a role renamed': files.roleFileRenamed,
  'case of a name changed': files.caseChanged,
  'picture renamed': files.pictureRenamed,
  'licence changed': files.licenceChanged,
  'revision changed': files.revisionChanged,
  'caution dropped': cautionDropped,
  'caution moved after the work': cautionMoved,
};
