// What one core can do at most: fused multiply-adds of the widest vectors there are in twelve registers, no memory. Billions of operations a second, a multiply-add counted as two.
#include <chrono>
#include <cstdio>
#include <immintrin.h>

int main()
{
    constexpr int Registers = 12, Count = 1000000;
#ifdef __AVX512F__
    using Vector = __m512d;
    const Vector m = _mm512_set1_pd(0.999999), c = _mm512_set1_pd(1e-6);
    const auto fma = [](Vector a, Vector b, Vector d) { return _mm512_fmadd_pd(a, b, d); };
#else
    using Vector = __m256d;
    const Vector m = _mm256_set1_pd(0.999999), c = _mm256_set1_pd(1e-6);
    const auto fma = [](Vector a, Vector b, Vector d) { return _mm256_fmadd_pd(a, b, d); };
#endif
    constexpr int Doubles = sizeof(Vector) / sizeof(double);
    double least = 1e300, kept = 0;
    for (int round = 0; round < 60; ++round)
    {
        Vector r[Registers];
        for (auto& each : r) each = m;
        const auto began = std::chrono::steady_clock::now();
        for (int i = 0; i < Count; ++i)
        {
            // Unrolled whole, so that the array lives in registers; the empty statement keeps the sum from being rearranged over turns.
#pragma GCC unroll 12
            for (int j = 0; j < Registers; ++j)
            {
                r[j] = fma(r[j], m, c);
                asm volatile("" : "+v"(r[j]));
            }
        }
        const double taken = std::chrono::duration<double, std::nano>(std::chrono::steady_clock::now() - began).count();
        least = taken < least ? taken : least;
        for (auto& each : r) kept += each[0];
    }
    std::printf("peak;C++;%d;%.1f\n", Doubles, 2.0 * Doubles * Registers * Count / least);
    return kept > 0 ? 0 : 1;
}
