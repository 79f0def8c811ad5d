namespace LubeController.Firmware.Tests.Architecture;

/// <summary>One namespace of an assembly names another of the same assembly.</summary>
/// <param name="From">The namespace that names the other.</param>
/// <param name="To">The one that is named; never <paramref name="From"/>.</param>
/// <param name="Where">The type or file that does so, for messages.</param>
public sealed record NamespaceUse(string From, string To, string Where);
