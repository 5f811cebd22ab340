"""What the jobs come to: by line, job, stage and zone, and one part held against another."""
