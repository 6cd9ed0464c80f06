/** What each entry made at the bench is called, as undo names it. */
export const shopDeedText = {
  straightEdge: (member: string) => `Straight edge on ${member}`,
  push: (member: string) => `Push on ${member}`,
  roundness: (member: string) => `Diameters of ${member}`,
  inspected: (member: string) => `Looked at again: ${member}`,
  accepted: (member: string) => `Straightening of ${member} accepted`,
  fitUp: (member: string) => `Fit-up card of ${member}`,
  fitUpClosed: (member: string) => `Fit-up of ${member} looked over`,
} as const;
