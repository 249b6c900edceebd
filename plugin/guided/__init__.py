"""The guided run: a panel that asks in the order a person thinks, and runs toolbox entries. It computes nothing."""
