import * as z from 'zod/mini';

// Pages of an extension may not make code from text. Without this zod tries it once, and the browser logs a violation.
z.config({ jitless: true });
