"""Where the standalone program begins."""

import multiprocessing

from templates_gen.__main__ import main

if __name__ == "__main__":
    multiprocessing.freeze_support()  # `template` of several jobs starts itself again
    main()
