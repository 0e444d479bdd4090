"""The version of the library, for itself and for whatever it saves."""

VERSION = "0.1.0"
