"""What this computer lacks, and how to mend it."""
