"""Motion trials: how long a path takes, ringing, and how much quality costs how much time."""
