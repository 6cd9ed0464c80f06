import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

const wcag = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What an automated check of WCAG 2.2 AA finds on the page as it stands: rule and place. Source: axe-core's rules. */
export const accessFaults = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).withTags(wcag).analyze();
  return violations.map((v) => `${v.id} ${v.nodes[0]?.target.join(' ')}`);
};
