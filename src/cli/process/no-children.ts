/** In place of Node's module: no command of ours is a program of its own. */
export {}
