"""What is said to a person: functions of findings that return Html and never calculate."""
