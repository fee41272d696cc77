"""Every calculation of the core under every input: finite numbers out, or a refusal in words."""
