import './plainChecks.ts';
import './style/tokens.css';
import './style/press.css';
import './style/marks.css';
import './style/lists.css';
import './style/sheet.css';
import './style/card.css';
import './style/narrow.css';
import './style/overlay.css';
import './style/practice.css';
import './style/shop.css';
import './style/plan.css';
import './style/floor.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { beginKeeping, save } from './jobs.ts';
import { keepFocus } from './keepFocus.ts';
import { firstText } from './models.ts';
import { keepProgram } from './offline.ts';
import { openText } from './opening.ts';
import { ErrorEdge } from './parts/ErrorEdge.tsx';
import { followJob } from './state/answer.ts';
import { usePrefs } from './state/prefs.ts';
import { frameText } from './text/frame.ts';

document.documentElement.dataset.light = usePrefs.getState().light;
followJob();
keepFocus();
// Leaving the page is announced by this alone on phones and tablets.
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') void save();
});
void beginKeeping(async () => openText(await firstText(), 'demo job'));
void navigator.storage?.persist?.();
// The first picture goes before the copy for later.
addEventListener('load', () => void keepProgram());

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <ErrorEdge words={frameText.screenFailed}>
      <App />
    </ErrorEdge>
  </StrictMode>,
);
