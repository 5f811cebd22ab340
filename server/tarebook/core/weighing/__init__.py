"""What a part weighs: by its weighings and their scales, or by what is claimed or worked out."""
