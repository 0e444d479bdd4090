"""The public names of a folder, each imported when it is asked for.

A folder names them in its `__init__`; whoever uses the folder from outside uses these names only,
so that a file can move without breaking anybody.
"""

from __future__ import annotations


def public_names(folder: str, **homes: str):
    """The `__getattr__` and `__all__` of a folder; `homes` is module: its public names.

    >>> look_up, names = public_names("repairlib.core", series="is_preferred next_up")
    >>> names, look_up("next_up").__module__
    (['is_preferred', 'next_up'], 'repairlib.core.series')
    """
    home_of = {name: module for module, names in homes.items() for name in names.split()}

    def look_up(name: str):
        if name not in home_of:
            raise AttributeError(f"{folder} has no {name}")
        import sys
        from importlib import import_module

        found = getattr(import_module(f"{folder}.{home_of[name]}"), name)
        setattr(sys.modules[folder], name, found)
        return found

    return look_up, list(home_of)
