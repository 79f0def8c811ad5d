using System.Collections.Generic;
using LubeController.Files.Reading;
using LubeController.Plant.Description;

namespace LubeController.Files.PlantFiles;

/// <summary>A plant file that was accepted.</summary>
/// <param name="Plant">The plant.</param>
/// <param name="Remarks">What is unusual about it without being wrong.</param>
public sealed record LoadedPlant(PlantDescription Plant, IReadOnlyList<Problem> Remarks);
