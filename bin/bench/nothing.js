// The least that node can be asked to do.
