/** Issue codes of plan, take-off and estimate → sentences. */
export const planIssueSentences: Readonly<Record<string, string>> = {
  'gate-done-with-evidence-missing':
    'The hold point {gate} is ticked, with no reason, while something it asks for is missing: {missing}.',
  'plan-order-names-no-step': 'Your order of steps names steps that the plan does not have: {ids}.',
  'plan-order-refused':
    'Your order of steps is not used: it breaks the rule {rule} at {step}, which has to follow {by}.',
  'plan-moves-freely': 'The truss moves freely at {clusters}, so nothing is opened or bent in a plan.',
  'plan-open-now-not-held': 'With {open} open now the truss does not stand: {clusters} move.',
  'plan-straightening-stopped': 'The straightening of {id} is stopped: {why}.',
  'plan-marks-laid-again':
    'Marks were laid out again since the baseline was read ({bays}): distances from old and new marks are never mixed.',
  'plan-stray-open': '{id} is open and no decided repair opens it. The plan works round it.',
  'plan-sag-not-judged': 'Nobody has said how the truss is held ({heldAs}), so no sag is judged.',
  'plan-cut-before-its-needs': '{step} is ticked before what it needs: {missing}.',
  'plan-relief-not-decided':
    'A stronger relief for {target} would cut {cuts}, which is not decided to be opened. It is not in the plan.',
  'relief-cut-would-open-two':
    'The best relief for {target} is to cut {cut}, but that would open two at one cluster with {open}. Planned instead: {instead}.',
  'plan-brace-put-in': 'For {id} the plan puts in a brace from {from} to {to}.',
  'plan-cut-put-later': '{id} is opened later than its relief would like: nothing tried holds it earlier.',
  'piece-longer-than-stock': '{id} is longer than a bought length of {stockIn}.',
  'takeoff-without-design': '{id} has no design yet, so tube, weld and weight of it are not told.',
  'hidden-chance-unreadable': 'The chance for the band {band} cannot be read: {got}.',
  'rate-out-of-order': 'Your rate of {operation} is not used: best {best}, likely {likely}, worst {worst}.',
  'rate-of-no-operation': 'Your rate names no operation: {operation}.',
};

/** Mends of the same stages. */
export const planMendSentences: Readonly<Record<string, string>> = {
  'add-it-or-write-why': 'Add what is missing, or write why it counts as done.',
  'take-the-baseline-again': 'Take the baseline again from the new marks.',
  'read-the-plan': 'Read the plan as it stands.',
  'move-the-step-back': 'Move the step back, or take your order off.',
  'decide-again': 'Decide again.',
  'decide-it': 'Decide it, or leave it.',
  'do-them-or-write-why': 'Do them, or write why not.',
  'say-how-held': 'Say how the truss is held.',
  'get-a-longer-length': 'Get a longer length, or enter the length you buy.',
  'design-the-repair': 'Work its design under Splice.',
  'write-a-share-0-to-1': 'Write a share from 0 to 1, or 0 to 100 %.',
  'best-not-over-likely-not-over-worst': 'Best is not over likely, likely not over worst.',
  'name-an-operation': 'Name an operation of the rate table.',
  'cut-it-after-the-others-close': 'Cut it when the others are closed.',
};
