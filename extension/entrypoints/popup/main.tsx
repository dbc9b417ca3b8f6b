import '../../platform/without-eval.ts';
import '@platewright/core/ui/theme.css';
import '@platewright/core/ui/base.css';
import '@platewright/core/ui/button.css';
import '@platewright/core/ui/form.css';
import '@platewright/core/ui/beam.css';
import '@platewright/core/ui/meal.css';
import '../../pairing/pairing.css';
import '../../popup/popup.css';
import '../../popup/line/line.css';
import { render } from 'preact';
import { Popup } from '../../popup/popup.tsx';

const app = document.getElementById('app');
if (app !== null) render(<Popup />, app);
