#!/bin/sh
# Checks what is about to be committed, by the program that the shop has installed, else by that of the machine. Readings
# that are out do not stop a commit: they are what a build log is for. Documents that cannot be trusted do.
PATH="$PWD/node_modules/.bin:$PATH"
tenths check --staged
[ $? -le 1 ]
