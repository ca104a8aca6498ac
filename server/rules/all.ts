// Generated from the folders of this room by `npm run generate`. Do not edit.
import { rule as acceptanceExpired } from './acceptance-expired/rule.ts';
import { rule as acceptanceNotAllowed } from './acceptance-not-allowed/rule.ts';
import { rule as acceptanceOfUnknownRule } from './acceptance-of-unknown-rule/rule.ts';
import { rule as acceptanceUnsigned } from './acceptance-unsigned/rule.ts';
import { rule as acceptanceUnused } from './acceptance-unused/rule.ts';
import { rule as acceptanceWithoutReason } from './acceptance-without-reason/rule.ts';
import { rule as adjusterOutOfRange } from './adjuster-out-of-range/rule.ts';
import { rule as angleOutOfReach } from './angle-out-of-reach/rule.ts';
import { rule as batteryTooSmall } from './battery-too-small/rule.ts';
import { rule as batteryVoltageUnfit } from './battery-voltage-unfit/rule.ts';
import { rule as beamTooHigh } from './beam-too-high/rule.ts';
import { rule as blockWithoutBody } from './block-without-body/rule.ts';
import { rule as bodyUnexpected } from './body-unexpected/rule.ts';
import { rule as braceMissing } from './brace-missing/rule.ts';
import { rule as braceStray } from './brace-stray/rule.ts';
import { rule as cableCoresTooFew } from './cable-cores-too-few/rule.ts';
import { rule as cableLoadUnderstated } from './cable-load-understated/rule.ts';
import { rule as cableOverloaded } from './cable-overloaded/rule.ts';
import { rule as chainedEdgesWatchDifferently } from './chained-edges-watch-differently/rule.ts';
import { rule as characterNotAllowed } from './character-not-allowed/rule.ts';
import { rule as choiceUnknown } from './choice-unknown/rule.ts';
import { rule as closedLeafInWind } from './closed-leaf-in-wind/rule.ts';
import { rule as closingEdgeUnguarded } from './closing-edge-unguarded/rule.ts';
import { rule as closingOrderNotReversed } from './closing-order-not-reversed/rule.ts';
import { rule as commonCauseNotShown } from './common-cause-not-shown/rule.ts';
import { rule as commonWrong } from './common-wrong/rule.ts';
import { rule as contactWrong } from './contact-wrong/rule.ts';
import { rule as controlMissing } from './control-missing/rule.ts';
import { rule as controlNotWired } from './control-not-wired/rule.ts';
import { rule as controlOutOfView } from './control-out-of-view/rule.ts';
import { rule as controlWithinReach } from './control-within-reach/rule.ts';
import { rule as dateImpossible } from './date-impossible/rule.ts';
import { rule as deadPointInTravel } from './dead-point-in-travel/rule.ts';
import { rule as decimalComma } from './decimal-comma/rule.ts';
import { rule as driveForceUnfit } from './drive-force-unfit/rule.ts';
import { rule as driveNotWired } from './drive-not-wired/rule.ts';
import { rule as driveUnfit } from './drive-unfit/rule.ts';
import { rule as dutyOverRating } from './duty-over-rating/rule.ts';
import { rule as dwellShorterThanClearance } from './dwell-shorter-than-clearance/rule.ts';
import { rule as edgeChainBroken } from './edge-chain-broken/rule.ts';
import { rule as edgeLoopAmbiguous } from './edge-loop-ambiguous/rule.ts';
import { rule as edgeLoopTerminatedTwice } from './edge-loop-terminated-twice/rule.ts';
import { rule as edgeLoopUnterminated } from './edge-loop-unterminated/rule.ts';
import { rule as edgeOvertravelTooLong } from './edge-overtravel-too-long/rule.ts';
import { rule as edgeTerminatorWrong } from './edge-terminator-wrong/rule.ts';
import { rule as electricalFactsUnstated } from './electrical-facts-unstated/rule.ts';
import { rule as entrapmentProtectionBelowMinimum } from './entrapment-protection-below-minimum/rule.ts';
import { rule as expectationNotMet } from './expectation-not-met/rule.ts';
import { rule as factMissing } from './fact-missing/rule.ts';
import { rule as factRepeated } from './fact-repeated/rule.ts';
import { rule as fileEmpty } from './file-empty/rule.ts';
import { rule as fileTooLarge } from './file-too-large/rule.ts';
import { rule as forceNotMeasured } from './force-not-measured/rule.ts';
import { rule as forceOverLimit } from './force-over-limit/rule.ts';
import { rule as forcePointsMissing } from './force-points-missing/rule.ts';
import { rule as forceReadingImpossible } from './force-reading-impossible/rule.ts';
import { rule as forceRecordOutdated } from './force-record-outdated/rule.ts';
import { rule as forceSettingOutsideWindow } from './force-setting-outside-window/rule.ts';
import { rule as forceTestOverdue } from './force-test-overdue/rule.ts';
import { rule as forceWindowEmpty } from './force-window-empty/rule.ts';
import { rule as forceWindowNarrow } from './force-window-narrow/rule.ts';
import { rule as functionLeavesOutPart } from './function-leaves-out-part/rule.ts';
import { rule as gateSaturated } from './gate-saturated/rule.ts';
import { rule as hazardUncovered } from './hazard-uncovered/rule.ts';
import { rule as hingeGapContradicted } from './hinge-gap-contradicted/rule.ts';
import { rule as hingeGuardBeyondLeaf } from './hinge-guard-beyond-leaf/rule.ts';
import { rule as holdToRunMisuse } from './hold-to-run-misuse/rule.ts';
import { rule as holdToRunOvertravels } from './hold-to-run-overtravels/rule.ts';
import { rule as holdToRunTooFast } from './hold-to-run-too-fast/rule.ts';
import { rule as infillOpeningTooWide } from './infill-opening-too-wide/rule.ts';
import { rule as inputBridged } from './input-bridged/rule.ts';
import { rule as instrumentOutOfCalibration } from './instrument-out-of-calibration/rule.ts';
import { rule as lagTooSmall } from './lag-too-small/rule.ts';
import { rule as lagWithoutOverlap } from './lag-without-overlap/rule.ts';
import { rule as languageMissing } from './language-missing/rule.ts';
import { rule as languageNotFirst } from './language-not-first/rule.ts';
import { rule as languageUnknown } from './language-unknown/rule.ts';
import { rule as leafDrivenTwice } from './leaf-driven-twice/rule.ts';
import { rule as leafMeetsGround } from './leaf-meets-ground/rule.ts';
import { rule as leafMeetsPost } from './leaf-meets-post/rule.ts';
import { rule as leafMovesWhenReleased } from './leaf-moves-when-released/rule.ts';
import { rule as leafOverDriveRating } from './leaf-over-drive-rating/rule.ts';
import { rule as leafSwingsAndSlides } from './leaf-swings-and-slides/rule.ts';
import { rule as leafWithoutDrive } from './leaf-without-drive/rule.ts';
import { rule as libraryHasErrors } from './library-has-errors/rule.ts';
import { rule as lineWithoutWord } from './line-without-word/rule.ts';
import { rule as linkWrong } from './link-wrong/rule.ts';
import { rule as loopImpedanceTooHigh } from './loop-impedance-too-high/rule.ts';
import { rule as mainsCircuitUnprotected } from './mains-circuit-unprotected/rule.ts';
import { rule as mainsIsolationNotStated } from './mains-isolation-not-stated/rule.ts';
import { rule as manualReleaseNotStated } from './manual-release-not-stated/rule.ts';
import { rule as measureBeyondKind } from './measure-beyond-kind/rule.ts';
import { rule as modelMissing } from './model-missing/rule.ts';
import { rule as modelRepeated } from './model-repeated/rule.ts';
import { rule as modelUnknown } from './model-unknown/rule.ts';
import { rule as motorWiresWrong } from './motor-wires-wrong/rule.ts';
import { rule as nameLooksLikeAnother } from './name-looks-like-another/rule.ts';
import { rule as nameMissing } from './name-missing/rule.ts';
import { rule as nameMixesAlphabets } from './name-mixes-alphabets/rule.ts';
import { rule as nameRepeated } from './name-repeated/rule.ts';
import { rule as nameUnfit } from './name-unfit/rule.ts';
import { rule as nameUnknown } from './name-unknown/rule.ts';
import { rule as nestedTooDeep } from './nested-too-deep/rule.ts';
import { rule as normallyClosedInputOpen } from './normally-closed-input-open/rule.ts';
import { rule as notJudged } from './not-judged/rule.ts';
import { rule as openLeafCrushes } from './open-leaf-crushes/rule.ts';
import { rule as openingLeafUnguarded } from './opening-leaf-unguarded/rule.ts';
import { rule as orderAgainstOverlap } from './order-against-overlap/rule.ts';
import { rule as outputOverloaded } from './output-overloaded/rule.ts';
import { rule as outputVoltageUnfit } from './output-voltage-unfit/rule.ts';
import { rule as overlapCannotWork } from './overlap-cannot-work/rule.ts';
import { rule as overlapCircular } from './overlap-circular/rule.ts';
import { rule as overlapOnTwoPanels } from './overlap-on-two-panels/rule.ts';
import { rule as panelMissing } from './panel-missing/rule.ts';
import { rule as panelTooSmall } from './panel-too-small/rule.ts';
import { rule as partDueForReplacement } from './part-due-for-replacement/rule.ts';
import { rule as pedestrianEntranceShared } from './pedestrian-entrance-shared/rule.ts';
import { rule as pedestrianLeafCovered } from './pedestrian-leaf-covered/rule.ts';
import { rule as pedestrianOpeningUnguarded } from './pedestrian-opening-unguarded/rule.ts';
import { rule as performanceLevelTooLow } from './performance-level-too-low/rule.ts';
import { rule as pivotGapTooWide } from './pivot-gap-too-wide/rule.ts';
import { rule as protectionBelowLoad } from './protection-below-load/rule.ts';
import { rule as protectionOverCableRating } from './protection-over-cable-rating/rule.ts';
import { rule as protectionUntested } from './protection-untested/rule.ts';
import { rule as protectiveConductorTooSmall } from './protective-conductor-too-small/rule.ts';
import { rule as queueReachesRoad } from './queue-reaches-road/rule.ts';
import { rule as requiredLevelBelowStandard } from './required-level-below-standard/rule.ts';
import { rule as residualCurrentDeviceUnfit } from './residual-current-device-unfit/rule.ts';
import { rule as rollersBeyondTail } from './rollers-beyond-tail/rule.ts';
import { rule as safeguardLevelTooLow } from './safeguard-level-too-low/rule.ts';
import { rule as safeguardingBelowMinimum } from './safeguarding-below-minimum/rule.ts';
import { rule as safetyFunctionUndeclared } from './safety-function-undeclared/rule.ts';
import { rule as seatOutsidePractice } from './seat-outside-practice/rule.ts';
import { rule as secretInFile } from './secret-in-file/rule.ts';
import { rule as selectorAgainstControl } from './selector-against-control/rule.ts';
import { rule as selectorUnknown } from './selector-unknown/rule.ts';
import { rule as sensorNotFed } from './sensor-not-fed/rule.ts';
import { rule as sensorNotRegistered } from './sensor-not-registered/rule.ts';
import { rule as sensorNotWired } from './sensor-not-wired/rule.ts';
import { rule as sensorOutOfReach } from './sensor-out-of-reach/rule.ts';
import { rule as signMisplaced } from './sign-misplaced/rule.ts';
import { rule as siteMissing } from './site-missing/rule.ts';
import { rule as slidingLeafTooFast } from './sliding-leaf-too-fast/rule.ts';
import { rule as slowZoneMissing } from './slow-zone-missing/rule.ts';
import { rule as solarTooSmall } from './solar-too-small/rule.ts';
import { rule as strokeTooShort } from './stroke-too-short/rule.ts';
import { rule as supplyMismatch } from './supply-mismatch/rule.ts';
import { rule as tailOutsidePractice } from './tail-outside-practice/rule.ts';
import { rule as terminalUnfit } from './terminal-unfit/rule.ts';
import { rule as terminalUnknown } from './terminal-unknown/rule.ts';
import { rule as terminalUsedTwice } from './terminal-used-twice/rule.ts';
import { rule as textNotClosed } from './text-not-closed/rule.ts';
import { rule as travelBeyondLeaf } from './travel-beyond-leaf/rule.ts';
import { rule as unitMissing } from './unit-missing/rule.ts';
import { rule as unitUnknown } from './unit-unknown/rule.ts';
import { rule as unitWrong } from './unit-wrong/rule.ts';
import { rule as usageClassAgainstUsers } from './usage-class-against-users/rule.ts';
import { rule as useCycle } from './use-cycle/rule.ts';
import { rule as useLeadsTooFar } from './use-leads-too-far/rule.ts';
import { rule as useMissingFile } from './use-missing-file/rule.ts';
import { rule as useOutsideRoot } from './use-outside-root/rule.ts';
import { rule as usePathUnfit } from './use-path-unfit/rule.ts';
import { rule as useRepeated } from './use-repeated/rule.ts';
import { rule as useUnused } from './use-unused/rule.ts';
import { rule as valueMissing } from './value-missing/rule.ts';
import { rule as valueOutOfRange } from './value-out-of-range/rule.ts';
import { rule as valueUnexpected } from './value-unexpected/rule.ts';
import { rule as valueUnfit } from './value-unfit/rule.ts';
import { rule as voltageDropTooGreat } from './voltage-drop-too-great/rule.ts';
import { rule as warningSignMissing } from './warning-sign-missing/rule.ts';
import { rule as wordUnknown } from './word-unknown/rule.ts';
import type { Rule } from './rule.ts';

export const allRules: readonly Rule[] = [
  acceptanceExpired,
  acceptanceNotAllowed,
  acceptanceOfUnknownRule,
  acceptanceUnsigned,
  acceptanceUnused,
  acceptanceWithoutReason,
  adjusterOutOfRange,
  angleOutOfReach,
  batteryTooSmall,
  batteryVoltageUnfit,
  beamTooHigh,
  blockWithoutBody,
  bodyUnexpected,
  braceMissing,
  braceStray,
  cableCoresTooFew,
  cableLoadUnderstated,
  cableOverloaded,
  chainedEdgesWatchDifferently,
  characterNotAllowed,
  choiceUnknown,
  closedLeafInWind,
  closingEdgeUnguarded,
  closingOrderNotReversed,
  commonCauseNotShown,
  commonWrong,
  contactWrong,
  controlMissing,
  controlNotWired,
  controlOutOfView,
  controlWithinReach,
  dateImpossible,
  deadPointInTravel,
  decimalComma,
  driveForceUnfit,
  driveNotWired,
  driveUnfit,
  dutyOverRating,
  dwellShorterThanClearance,
  edgeChainBroken,
  edgeLoopAmbiguous,
  edgeLoopTerminatedTwice,
  edgeLoopUnterminated,
  edgeOvertravelTooLong,
  edgeTerminatorWrong,
  electricalFactsUnstated,
  entrapmentProtectionBelowMinimum,
  expectationNotMet,
  factMissing,
  factRepeated,
  fileEmpty,
  fileTooLarge,
  forceNotMeasured,
  forceOverLimit,
  forcePointsMissing,
  forceReadingImpossible,
  forceRecordOutdated,
  forceSettingOutsideWindow,
  forceTestOverdue,
  forceWindowEmpty,
  forceWindowNarrow,
  functionLeavesOutPart,
  gateSaturated,
  hazardUncovered,
  hingeGapContradicted,
  hingeGuardBeyondLeaf,
  holdToRunMisuse,
  holdToRunOvertravels,
  holdToRunTooFast,
  infillOpeningTooWide,
  inputBridged,
  instrumentOutOfCalibration,
  lagTooSmall,
  lagWithoutOverlap,
  languageMissing,
  languageNotFirst,
  languageUnknown,
  leafDrivenTwice,
  leafMeetsGround,
  leafMeetsPost,
  leafMovesWhenReleased,
  leafOverDriveRating,
  leafSwingsAndSlides,
  leafWithoutDrive,
  libraryHasErrors,
  lineWithoutWord,
  linkWrong,
  loopImpedanceTooHigh,
  mainsCircuitUnprotected,
  mainsIsolationNotStated,
  manualReleaseNotStated,
  measureBeyondKind,
  modelMissing,
  modelRepeated,
  modelUnknown,
  motorWiresWrong,
  nameLooksLikeAnother,
  nameMissing,
  nameMixesAlphabets,
  nameRepeated,
  nameUnfit,
  nameUnknown,
  nestedTooDeep,
  normallyClosedInputOpen,
  notJudged,
  openLeafCrushes,
  openingLeafUnguarded,
  orderAgainstOverlap,
  outputOverloaded,
  outputVoltageUnfit,
  overlapCannotWork,
  overlapCircular,
  overlapOnTwoPanels,
  panelMissing,
  panelTooSmall,
  partDueForReplacement,
  pedestrianEntranceShared,
  pedestrianLeafCovered,
  pedestrianOpeningUnguarded,
  performanceLevelTooLow,
  pivotGapTooWide,
  protectionBelowLoad,
  protectionOverCableRating,
  protectionUntested,
  protectiveConductorTooSmall,
  queueReachesRoad,
  requiredLevelBelowStandard,
  residualCurrentDeviceUnfit,
  rollersBeyondTail,
  safeguardLevelTooLow,
  safeguardingBelowMinimum,
  safetyFunctionUndeclared,
  seatOutsidePractice,
  secretInFile,
  selectorAgainstControl,
  selectorUnknown,
  sensorNotFed,
  sensorNotRegistered,
  sensorNotWired,
  sensorOutOfReach,
  signMisplaced,
  siteMissing,
  slidingLeafTooFast,
  slowZoneMissing,
  solarTooSmall,
  strokeTooShort,
  supplyMismatch,
  tailOutsidePractice,
  terminalUnfit,
  terminalUnknown,
  terminalUsedTwice,
  textNotClosed,
  travelBeyondLeaf,
  unitMissing,
  unitUnknown,
  unitWrong,
  usageClassAgainstUsers,
  useCycle,
  useLeadsTooFar,
  useMissingFile,
  useOutsideRoot,
  usePathUnfit,
  useRepeated,
  useUnused,
  valueMissing,
  valueOutOfRange,
  valueUnexpected,
  valueUnfit,
  voltageDropTooGreat,
  warningSignMissing,
  wordUnknown,
];
