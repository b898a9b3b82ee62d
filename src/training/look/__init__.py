"""The closer look: was this key struck at this step, and when?"""
