"""What every toolbox entry is made of: run sequence, parameters, request, run record."""
