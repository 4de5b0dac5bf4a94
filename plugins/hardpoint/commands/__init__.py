"""What the commands of the command line do, one module for each group of them."""
