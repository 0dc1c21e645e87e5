# Why a sizing or a steady state came out as it did, or did not.
