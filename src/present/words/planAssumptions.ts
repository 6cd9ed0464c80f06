/** What plan, take-off and estimate assumed; by the names core gives them. */
export const planAssumptions: Readonly<Record<string, string>> = {
  'ends-not-coped': 'ends not coped',
  'fillet-leg-is-wall': 'a fillet whose leg is the wall',
  'no-design': 'no design yet',
  'no-loss': 'no loss of rod',
  'one-draw-a-rate': 'a rate holds for all its lines; different rates go their own ways',
  'own-weight-only': 'weight of the tubes alone',
  'paint-and-fabric-not-counted': 'paint and fabric not counted',
  'tacked-carries': 'a tacked tube carries',
  'two-inches-past-each-joint': 'old tube painted again 2 in past each joint',
};

/** Names of sums that figures of these stages rest on. */
export const planRefs: Readonly<Record<string, string>> = {
  'bars-times-length': 'lengths bought, times their length',
  'bought-less-net': 'bought, less what stays in',
  'cluster-to-cluster': 'from cluster to cluster',
  'draws-0.1': 'one draw in ten of the hours lies below',
  'draws-0.5': 'half the draws of the hours lie below',
  'draws-0.9': 'nine draws in ten of the hours lie below',
  'longest-less-axis': 'longest line less the axis',
  'middle-of-the-parts': 'middle of the parts, by weight',
  'moment-over-weight': 'moment over weight',
  'net-scarf-kerf': 'net, angled ends and one kerf',
  'no-rosettes': 'this method has no rosettes',
  'outside-area': 'outside of the parts',
  'own-weight-sag': 'growth of own-weight sag',
  'sag-1/32': 'starting value of 1/32 in',
  'shift-over-chord': 'shift over the chord',
  'stock-length': 'starting length of a bought tube',
  'sum-of-means': 'sum of the means',
  'sum-of-rows': 'sum of the rows',
  'weight-times-arm': 'weight times station',
};
