/**
 * Sentences for people by stable code. A name in braces is filled in; a name followed by a question mark may be missing,
 * and then the part in square brackets that holds it is left out. Plain words first: the reader may be a customer.
 */
export const textTemplates = {
  // verdicts
  'verdict.inside': 'The reading of {value} is inside the limit.',
  'verdict.outside': 'The reading of {value} is outside the limit.',
  'verdict.undecided': 'The reading of {value} is too close to the limit to decide.',
  'verdict.faceValue':
    'The numbers alone were compared, because the accuracy of the instrument is not known.',
  'verdict.notJudged': 'The reading is kept and was not judged.',
  'notJudged.valueToConfirm': 'The value looks unlikely. Please confirm it or enter it again.',
  'notJudged.prerequisitesOpen':
    'An earlier check has to be passed first[: {checks?}]. The reading is kept as provisional.',
  'notJudged.limitNotConfirmed':
    'This limit has not been confirmed by the shop yet, so nothing is judged by it.',
  'notJudged.limitNotApplicable': 'This limit does not apply to this vehicle.',
  'notJudged.limitNotInForce': 'This limit was not in force on that day.',
  'notJudged.instrumentUnknown': 'It is not known which instrument was used.',
  'notJudged.excluded': 'In this situation the rule does not judge at all.',
  'notJudged.sourceUnclear': 'The rule can be read both ways exactly at this value.',
  'notJudged.wrongConditions': 'The reading was taken under other conditions than the limit asks for.',
  'notJudged.wrongKindOfQuantity': 'The unit does not fit what is measured.',
  'notJudged.contextMissing': 'Something about the vehicle is not known yet[: {missing?}].',
  'notJudged.notInTable': 'The rule lists no value for this size.',
  'notJudged.makerValueZero': 'The maker’s value is zero, so a multiple of it says nothing.',
  'notJudged.ratioUndefined': 'A share cannot be formed, because the higher reading is zero.',
  'notJudged.contradictsPhysicalBound': 'The reading contradicts what is physically possible.',
  'notJudged.contradictoryPair':
    'The two blades contradict each other: repeat; suspect a dirty contact or shaft play.',
  'notJudged.companionMissing': 'A second reading is needed before this answer counts.',
  'notJudged.companionNotConclusive':
    'The switch is set so that this answer proves nothing: reset it and repeat.',
  'notJudged.gradeUnknown': 'This grade is not on the list.',
  'notJudged.classOnly': 'The number gives a class, not a pass or a fail.',
  'furtherReadings.needed': '{count} more readings would settle it if their mean stayed where it is.',
  'furtherReadings.noNumberSettles':
    'No number of further readings would settle it with this instrument and set-up; a finer one might.',
  // next check
  'nextCheck.openingMove': 'It is quick and safe and is done on every such job.',
  'nextCheck.firstInOrder': 'It is the next check in the order of the sheet.',
  'nextCheck.informationPerMinute': 'It tells the most for the time it takes ({minutes} minutes).',
  'nextCheck.unlocks': 'It has to be done before {target}.',
  'nextCheck.separatesCauses': 'It tells {likelier} from {lessLikely}.',
  'nextCheck.repeatOfUndecided': 'The last result was not clear, so it is repeated.',
  'nextCheck.provisionalUntilCorrected': 'Its result stays provisional until {findings} is put right.',
  'nextCheck.correctFirst': 'Put {findings} right and check it again before going on.',
  'nextCheck.allChecksDone': 'All checks of the sheet have been done.',
  // causes
  'cause.established': 'The cause was found: {cause}.',
  'cause.notEstablished': 'The cause has not been established.',
  'cause.likeliest': 'So far the likeliest cause is that {cause}.',
  'cause.moreThanOne': 'More than one fault is possible until the road test has passed.',
  // findings and release
  'finding.dangerous':
    'Dangerous: {finding}. The vehicle must not be driven on the road before this is repaired.',
  'finding.advisory': 'Not failed, but worth watching: {finding}.',
  'finding.functionalOutranks':
    'Moving the shaft by hand works the switch; no measured number outweighs that.',
  'release.blockedByDangerousFinding': 'The vehicle cannot be released for the road: {finding}.',
  'release.proofMissing': 'Proof is missing: {points}.',
  'release.pointNotTested':
    '{point} was not tested[, because {reason?}][; it will be looked at again on {date?}].',
  // comebacks
  'comeback.sameFamily': 'The complaint is of the same kind as on the job of {date}.',
  'comeback.insideWindow': 'It came back after {days} days[ and {distance?}], inside the agreed window.',
  'comeback.outsideWindow': 'It came back after {days} days[ and {distance?}], outside the agreed window.',
  'comeback.distanceUnreliable': 'The distance is not reliable, so only the days count.',
  // data
  'data.insufficient': 'Not enough data: {needed|is|are} needed, {got|is|are} there.',
  'data.notReproduced': 'The complaint could not be shown under the conditions tried[: {conditions?}].',
  'safety.precedence': "The maker's instructions, local rules and licensed practice come first.",
  // order proposals
  'order.some': 'Order {quantity} now: {why}.',
  'order.none': 'Nothing to order now: {onHand} on the shelf and {onOrder} on order are enough.',
  'order.unattainable': 'No stock is certain to be enough; ask for a service below 100 %.',
  'order.vansReachLimit':
    '{vans|van reaches|vans reach} the limit within the {days}-day lead time ({expected} expected).',
  'order.vansEndLife':
    'The part of {vans|van|vans} ends its life within the {days}-day lead time, as such parts do ({expected} expected).',
  'order.jobsPlanned': '{jobs|open job plans|open jobs plan} to fit one.',
  'order.comebacksExpected': 'Repairs that come back within {days} days are expected to take {expected}.',
  'order.pastUse': 'Used so far: {perMonth} a month.',
  'order.stockAndOrders': '{onHand} on the shelf, {onOrder} on order.',
  'order.levelForService':
    '{level|is|are} wanted for a service of {target} %; without an order it is {without} %.',
  'order.orderOverdue': '{pieces|piece|pieces} on order and overdue.',
  'order.leadTimePromisedOnly':
    'Nothing has come from this supplier yet, so its promise of {days} days is taken.',
} as const satisfies Readonly<Record<string, string>>;

export type TextCode = keyof typeof textTemplates;
export const textCodes = Object.keys(textTemplates) as readonly TextCode[];
