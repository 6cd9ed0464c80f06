export const StraightenPanel = () => null;
