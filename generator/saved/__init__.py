"""A property folder as one archive, outside of it, and the way back.

In: a property folder, or an archive from anywhere. Out: an archive that was read back, or a new
folder beside what is there. Decided: what is saved and what is left out; which archive is put
beside. Never: a file that is there already, in a property folder or outside, is changed.
"""
