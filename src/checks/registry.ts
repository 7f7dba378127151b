// Made by scripts/generateChecks.mjs from the files in rules/.
import type { Check } from './defineCheck.ts';
import { actNotTold } from './rules/actNotTold.ts';
import { addressDiffers } from './rules/addressDiffers.ts';
import { addressUsedTwice } from './rules/addressUsedTwice.ts';
import { adviceUntested } from './rules/adviceUntested.ts';
import { afterBuildIncomplete } from './rules/afterBuildIncomplete.ts';
import { amountWithoutUnit } from './rules/amountWithoutUnit.ts';
import { assemblyNeverUsed } from './rules/assemblyNeverUsed.ts';
import { assemblyRunsOut } from './rules/assemblyRunsOut.ts';
import { batteryNotDescribed } from './rules/batteryNotDescribed.ts';
import { binaryUntied } from './rules/binaryUntied.ts';
import { boardNotNamed } from './rules/boardNotNamed.ts';
import { broughtForSome } from './rules/broughtForSome.ts';
import { busAddress } from './rules/busAddress.ts';
import { cautionAfterTheAct } from './rules/cautionAfterTheAct.ts';
import { cautionIncomplete } from './rules/cautionIncomplete.ts';
import { closedBeforeTest } from './rules/closedBeforeTest.ts';
import { codeElsewhere } from './rules/codeElsewhere.ts';
import { codeNeverLoaded } from './rules/codeNeverLoaded.ts';
import { codeNotFound } from './rules/codeNotFound.ts';
import { commandUncertain } from './rules/commandUncertain.ts';
import { componentNotListed } from './rules/componentNotListed.ts';
import { connectorBySide } from './rules/connectorBySide.ts';
import { connectorUnclear } from './rules/connectorUnclear.ts';
import { costDiffers } from './rules/costDiffers.ts';
import { costUntold } from './rules/costUntold.ts';
import { countOpen } from './rules/countOpen.ts';
import { definitionUnused } from './rules/definitionUnused.ts';
import { designElsewhere } from './rules/designElsewhere.ts';
import { earlierWorkNotLinked } from './rules/earlierWorkNotLinked.ts';
import { editionUntold } from './rules/editionUntold.ts';
import { faultLeft } from './rules/faultLeft.ts';
import { faultToldAlone } from './rules/faultToldAlone.ts';
import { fileNameVague } from './rules/fileNameVague.ts';
import { fileNotNamed } from './rules/fileNotNamed.ts';
import { hazardNotNamed } from './rules/hazardNotNamed.ts';
import { includedNotListed } from './rules/includedNotListed.ts';
import { instructionTooCoarse } from './rules/instructionTooCoarse.ts';
import { introductionIncomplete } from './rules/introductionIncomplete.ts';
import { libraryNotNamed } from './rules/libraryNotNamed.ts';
import { licenceDiffers } from './rules/licenceDiffers.ts';
import { licenceMissing } from './rules/licenceMissing.ts';
import { licenceNotKnown } from './rules/licenceNotKnown.ts';
import { licenceUnfit } from './rules/licenceUnfit.ts';
import { linkAlone } from './rules/linkAlone.ts';
import { linkFragile } from './rules/linkFragile.ts';
import { linkTracked } from './rules/linkTracked.ts';
import { linkUndefined } from './rules/linkUndefined.ts';
import { mainsNotDescribed } from './rules/mainsNotDescribed.ts';
import { measuredUnpowered } from './rules/measuredUnpowered.ts';
import { moreThanListed } from './rules/moreThanListed.ts';
import { nameByAnotherWord } from './rules/nameByAnotherWord.ts';
import { nameNearlyListed } from './rules/nameNearlyListed.ts';
import { nameTwoWays } from './rules/nameTwoWays.ts';
import { noteAfterTheAct } from './rules/noteAfterTheAct.ts';
import { notReadable } from './rules/notReadable.ts';
import { numberDiffersFromCode } from './rules/numberDiffersFromCode.ts';
import { numbersSkip } from './rules/numbersSkip.ts';
import { ohmsUnderPower } from './rules/ohmsUnderPower.ts';
import { packageDiffers } from './rules/packageDiffers.ts';
import { padsNotNamed } from './rules/padsNotNamed.ts';
import { partCountDiffers } from './rules/partCountDiffers.ts';
import { partNeverSpokenOf } from './rules/partNeverSpokenOf.ts';
import { partNotListed } from './rules/partNotListed.ts';
import { partNotTakenUp } from './rules/partNotTakenUp.ts';
import { partNumberMissing } from './rules/partNumberMissing.ts';
import { partsListMissing } from './rules/partsListMissing.ts';
import { partUnavailable } from './rules/partUnavailable.ts';
import { pathNotHere } from './rules/pathNotHere.ts';
import { pictureElsewhere } from './rules/pictureElsewhere.ts';
import { pictureMissing } from './rules/pictureMissing.ts';
import { pictureOfOtherVersion } from './rules/pictureOfOtherVersion.ts';
import { pictureUnused } from './rules/pictureUnused.ts';
import { pictureWithoutWords } from './rules/pictureWithoutWords.ts';
import { pictureWordsRepeated } from './rules/pictureWordsRepeated.ts';
import { pieceNotListed } from './rules/pieceNotListed.ts';
import { pinDiffers } from './rules/pinDiffers.ts';
import { pinInTextDiffers } from './rules/pinInTextDiffers.ts';
import { pinNamesMixed } from './rules/pinNamesMixed.ts';
import { pinOrderUnsaid } from './rules/pinOrderUnsaid.ts';
import { pinUnfit } from './rules/pinUnfit.ts';
import { pinUsedTwice } from './rules/pinUsedTwice.ts';
import { placeholderLeft } from './rules/placeholderLeft.ts';
import { polarityNotTold } from './rules/polarityNotTold.ts';
import { poweredWhileWorking } from './rules/poweredWhileWorking.ts';
import { powerUnchecked } from './rules/powerUnchecked.ts';
import { priceDiffers } from './rules/priceDiffers.ts';
import { printedPartOpen } from './rules/printedPartOpen.ts';
import { protectionNotNamed } from './rules/protectionNotNamed.ts';
import { ratingsMissing } from './rules/ratingsMissing.ts';
import { ratingTooLow } from './rules/ratingTooLow.ts';
import { readingDiffers } from './rules/readingDiffers.ts';
import { referenceBroken } from './rules/referenceBroken.ts';
import { reopeningUntold } from './rules/reopeningUntold.ts';
import { replacementUnsaid } from './rules/replacementUnsaid.ts';
import { requirementUntold } from './rules/requirementUntold.ts';
import { revisionDiffers } from './rules/revisionDiffers.ts';
import { rowTooVague } from './rules/rowTooVague.ts';
import { screwKeyMissing } from './rules/screwKeyMissing.ts';
import { secondLeftOut } from './rules/secondLeftOut.ts';
import { secondListDiffers } from './rules/secondListDiffers.ts';
import { secretInFiles } from './rules/secretInFiles.ts';
import { sectionRepeated } from './rules/sectionRepeated.ts';
import { sentenceBrokenOff } from './rules/sentenceBrokenOff.ts';
import { settingNotExplained } from './rules/settingNotExplained.ts';
import { sideNotAnnounced } from './rules/sideNotAnnounced.ts';
import { signalWordDoesNotFit } from './rules/signalWordDoesNotFit.ts';
import { sizeNotListed } from './rules/sizeNotListed.ts';
import { softwareStateUntold } from './rules/softwareStateUntold.ts';
import { softwareVersionMissing } from './rules/softwareVersionMissing.ts';
import { sourceMissing } from './rules/sourceMissing.ts';
import { sourceUntold } from './rules/sourceUntold.ts';
import { statusNotSaid } from './rules/statusNotSaid.ts';
import { stepNameGone } from './rules/stepNameGone.ts';
import { stepNumberWrong } from './rules/stepNumberWrong.ts';
import { takenAwayForGood } from './rules/takenAwayForGood.ts';
import { tallBeforeFlat } from './rules/tallBeforeFlat.ts';
import { temporaryStays } from './rules/temporaryStays.ts';
import { testWithoutResult } from './rules/testWithoutResult.ts';
import { textStruckOut } from './rules/textStruckOut.ts';
import { timeDiffers } from './rules/timeDiffers.ts';
import { toldBeforeExplained } from './rules/toldBeforeExplained.ts';
import { toolForWorkMissing } from './rules/toolForWorkMissing.ts';
import { toolNeverUsed } from './rules/toolNeverUsed.ts';
import { toolNotListed } from './rules/toolNotListed.ts';
import { toolTooVague } from './rules/toolTooVague.ts';
import { unfittedPartUsed } from './rules/unfittedPartUsed.ts';
import { unitMissing } from './rules/unitMissing.ts';
import { usedBeforeMade } from './rules/usedBeforeMade.ts';
import { valueDiffers } from './rules/valueDiffers.ts';
import { variantNamedOnce } from './rules/variantNamedOnce.ts';
import { versionNotPinned } from './rules/versionNotPinned.ts';
import { waitNotTold } from './rules/waitNotTold.ts';
import { wayNotChosen } from './rules/wayNotChosen.ts';
import { weakCriterion } from './rules/weakCriterion.ts';
import { webPageUndated } from './rules/webPageUndated.ts';
import { wireColourDiffers } from './rules/wireColourDiffers.ts';
import { wireNeverMade } from './rules/wireNeverMade.ts';
import { wordsNotExplained } from './rules/wordsNotExplained.ts';

/** All checks, in order of their file names. */
export const checks: readonly Check[] = [
  actNotTold,
  addressDiffers,
  addressUsedTwice,
  adviceUntested,
  afterBuildIncomplete,
  amountWithoutUnit,
  assemblyNeverUsed,
  assemblyRunsOut,
  batteryNotDescribed,
  binaryUntied,
  boardNotNamed,
  broughtForSome,
  busAddress,
  cautionAfterTheAct,
  cautionIncomplete,
  closedBeforeTest,
  codeElsewhere,
  codeNeverLoaded,
  codeNotFound,
  commandUncertain,
  componentNotListed,
  connectorBySide,
  connectorUnclear,
  costDiffers,
  costUntold,
  countOpen,
  definitionUnused,
  designElsewhere,
  earlierWorkNotLinked,
  editionUntold,
  faultLeft,
  faultToldAlone,
  fileNameVague,
  fileNotNamed,
  hazardNotNamed,
  includedNotListed,
  instructionTooCoarse,
  introductionIncomplete,
  libraryNotNamed,
  licenceDiffers,
  licenceMissing,
  licenceNotKnown,
  licenceUnfit,
  linkAlone,
  linkFragile,
  linkTracked,
  linkUndefined,
  mainsNotDescribed,
  measuredUnpowered,
  moreThanListed,
  nameByAnotherWord,
  nameNearlyListed,
  nameTwoWays,
  noteAfterTheAct,
  notReadable,
  numberDiffersFromCode,
  numbersSkip,
  ohmsUnderPower,
  packageDiffers,
  padsNotNamed,
  partCountDiffers,
  partNeverSpokenOf,
  partNotListed,
  partNotTakenUp,
  partNumberMissing,
  partsListMissing,
  partUnavailable,
  pathNotHere,
  pictureElsewhere,
  pictureMissing,
  pictureOfOtherVersion,
  pictureUnused,
  pictureWithoutWords,
  pictureWordsRepeated,
  pieceNotListed,
  pinDiffers,
  pinInTextDiffers,
  pinNamesMixed,
  pinOrderUnsaid,
  pinUnfit,
  pinUsedTwice,
  placeholderLeft,
  polarityNotTold,
  poweredWhileWorking,
  powerUnchecked,
  priceDiffers,
  printedPartOpen,
  protectionNotNamed,
  ratingsMissing,
  ratingTooLow,
  readingDiffers,
  referenceBroken,
  reopeningUntold,
  replacementUnsaid,
  requirementUntold,
  revisionDiffers,
  rowTooVague,
  screwKeyMissing,
  secondLeftOut,
  secondListDiffers,
  secretInFiles,
  sectionRepeated,
  sentenceBrokenOff,
  settingNotExplained,
  sideNotAnnounced,
  signalWordDoesNotFit,
  sizeNotListed,
  softwareStateUntold,
  softwareVersionMissing,
  sourceMissing,
  sourceUntold,
  statusNotSaid,
  stepNameGone,
  stepNumberWrong,
  takenAwayForGood,
  tallBeforeFlat,
  temporaryStays,
  testWithoutResult,
  textStruckOut,
  timeDiffers,
  toldBeforeExplained,
  toolForWorkMissing,
  toolNeverUsed,
  toolNotListed,
  toolTooVague,
  unfittedPartUsed,
  unitMissing,
  usedBeforeMade,
  valueDiffers,
  variantNamedOnce,
  versionNotPinned,
  waitNotTold,
  wayNotChosen,
  weakCriterion,
  webPageUndated,
  wireColourDiffers,
  wireNeverMade,
  wordsNotExplained,
];
