"""What a plan comes to in the days ahead."""
