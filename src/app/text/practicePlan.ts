/** Captions of putting the steps of a repair in order. */
export const planOrderText = {
  region: 'Plan practice',
  title: 'Plan practice',
  /** `own`: the open job has this plan; else that of a truss broken by the seed. */
  lead: (own: boolean, place: string, id: string) =>
    `${
      own
        ? 'Steps of this job’s own plan, round'
        : 'A truss like this one was broken by the seed. Steps of its plan, round'
    } ${place.toLowerCase()} (${id}). Put them in order, first at the top. Distances taken twice stand here once.`,
  rules: 'Rules of order kept',
  noneBroken: 'No rule is broken. More than one order keeps them all.',
  earlier: (step: string) => `Earlier: ${step}`,
  later: (step: string) => `Later: ${step}`,
  check: 'Check the order',
  again: 'Other steps, other mix',
  movesFreely:
    'No plan can be practised on this truss: loads cannot be followed through it, it moves freely.',
} as const;
