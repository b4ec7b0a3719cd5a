"""Model files: catalogue, fetching, assembly and cache.

Public names:

    bundles: Bundle, bundle_path, load, obtain, obtain_all, own_bundle
    catalogue: ModelQuality
    package_clients: PACKAGES, Progress
"""
