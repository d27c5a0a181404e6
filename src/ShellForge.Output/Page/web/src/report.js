// The report: a page that stands alone.
import { start } from './page.js';

start(null);
