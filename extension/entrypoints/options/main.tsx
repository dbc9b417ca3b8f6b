import '../../platform/without-eval.ts';
import '@platewright/core/ui/theme.css';
import '@platewright/core/ui/base.css';
import '@platewright/core/ui/button.css';
import '@platewright/core/ui/form.css';
import '../../pairing/pairing.css';
import '../../options/options.css';
import { render } from 'preact';
import { OptionsPage } from '../../options/options-page.tsx';

const app = document.getElementById('app');
if (app !== null) render(<OptionsPage />, app);
