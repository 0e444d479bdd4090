"""What a configuration of JupyterHub sets, read without starting one."""

from __future__ import annotations

from collections import defaultdict
from types import SimpleNamespace


class Settings(defaultdict):
    """As the `c` of a configuration: c.Class.trait = value."""

    def __getattr__(self, name):
        return self[name]


def settings_in(text: str) -> dict[str, dict]:
    """The settings that a configuration file makes, by class."""
    found = Settings(SimpleNamespace)
    known = {"get_config": lambda: found, "load_subconfig": lambda path: None}
    exec(compile(text, "jupyterhub_config.py", "exec"), known)
    return {name: vars(values) for name, values in found.items()}


def unknown_settings(text: str, spawner: type) -> set[str]:
    """The settings of a configuration that the installed JupyterHub and `spawner` do not know."""
    from jupyterhub.app import JupyterHub
    from jupyterhub.auth import Authenticator, PAMAuthenticator
    from jupyterhub.proxy import ConfigurableHTTPProxy
    from jupyterhub.spawner import Spawner

    known = (JupyterHub, Authenticator, PAMAuthenticator, ConfigurableHTTPProxy, Spawner, spawner)
    traits = {one.__name__: set(one.class_traits(config=True)) for one in known}
    return {
        f"{name}.{trait}"
        for name, values in settings_in(text).items()
        for trait in values
        if trait not in traits.get(name, ())
    }
