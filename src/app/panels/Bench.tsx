export const BenchPanel = () => null;
