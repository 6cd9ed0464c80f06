/** What each key of the pad is called aloud, and what stands on it; a key not named here is called by its own sign. */
export const keypadText = {
  pad: 'Keypad',
  over: (denominator: string) => `over ${denominator}`,
  said: {
    back: 'Backspace',
    clear: 'Clear',
    and: 'and a fraction',
    sign: 'Sign',
    '.': 'Point',
    "'": 'feet',
    '"': 'inches',
  } as Readonly<Record<string, string>>,
  shown: {
    back: '⌫',
    clear: 'C',
    and: 'and',
    sign: '±',
    "'": 'ft',
    '"': 'in',
  } as Readonly<Record<string, string>>,
} as const;
