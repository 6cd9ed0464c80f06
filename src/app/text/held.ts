/** Captions of how the truss is held now, and of the braces clamped in. */
export const heldText = {
  title: 'How the truss is held now',
  by: 'Held by',
  notSaid: 'not said yet',
  listed: 'Clusters named one by one',
  heldAtListed: 'Held at clusters named',
  heldBySetup: 'How the truss is held',
  choose: 'choose',
  freedoms: { x: 'along', y: 'across', z: 'up' },
  letGo: 'Let go',
  letGoNamed: (cluster: string) => `Let go ${cluster}`,
  wasLetGo: (cluster: string) => `${cluster} let go`,
  cluster: 'Cluster to hold',
  hold: 'Hold',
  wasHeld: (cluster: string) => `${cluster} held`,
} as const;

export const bracesText = {
  title: 'Braces clamped or tacked in',
  none: 'None recorded.',
  row: (from: string, to: string, tube: string) => `${from} to ${to}, ${tube}`,
  takeOut: 'Take out',
  takeOutNamed: (from: string, to: string) => `Take out the brace ${from} to ${to}`,
  takenOut: 'Brace taken out',
  from: 'Brace from',
  between: 'to',
  to: 'Brace to',
  tube: 'Tube of the brace',
  add: 'Brace',
  added: (from: string, to: string) => `Brace ${from} to ${to}`,
} as const;
