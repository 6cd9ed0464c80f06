export const SplicePanel = () => null;
