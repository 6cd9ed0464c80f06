/** Captions of the walk-round: tags, what is left, and whole faces at once. */
export const walkRoundText = {
  tag: (ids: readonly string[]) => `Tag ${ids.length === 1 ? ids[0] : `${ids.length} selected`}`,
  left: 'Left to look at',
  tubesLeft: (left: number, all: number) => `${left} of ${all} tubes not looked at`,
  clustersLeft: (left: number, all: number) =>
    `${left} of ${all} clusters not looked at. Select one or several, then tag them; or record a whole face below.`,
  begin: (id: string) => `Begin with ${id}`,
} as const;

export const lookByText = {
  method: 'Looked at by',
  finishRemoved: 'Finish removed',
} as const;

export const bulkText = {
  title: 'Looked at a whole face, or its access',
  zone: 'Bay and face',
  choose: 'Choose …',
  option: (zone: string, left: number, all: number) => `${zone}: ${left} of ${all} not looked at`,
  record: (tubes: number, method: string, finishRemoved: boolean) =>
    `Record ${tubes} tubes as looked at, ${method}${finishRemoved ? ', finish removed' : ''}`,
  recordNone: 'Record a face as looked at',
  access: (zone: string) => `Access to ${zone}`,
  noAccess: 'not recorded',
} as const;
