/** Captions of full-size templates. */
export const templatesText = {
  named: 'Templates',
  title: 'Templates, full size',
  lead: 'Print at 100 %, then lay a rule on the 100 mm and the 4 in bar of each sheet. With wraps come saw guide, formed blocks and roundness gauge.',
  paper: 'Paper',
  papers: { a4: 'A4', letter: 'Letter' },
  pdf: 'Templates (PDF)',
  svg: 'Templates (SVG)',
  states: {
    idle: '',
    working: 'The templates are being drawn …',
    done: 'The templates are saved.',
    failed: 'The templates could not be drawn, by our own fault.',
  },
} as const;
