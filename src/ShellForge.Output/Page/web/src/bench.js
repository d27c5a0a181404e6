// The page that the command serves: it follows the board file, which can be written in beside it.
import { follow } from './follow.js';
import { start } from './page.js';
import { server } from './server.js';

start(follow(server()));
