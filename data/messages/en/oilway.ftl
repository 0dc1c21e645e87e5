# What the command line and the pages say.
