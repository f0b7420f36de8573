// What one core can do at most: fused multiply-adds of four doubles in twelve registers, no memory. Billions of operations a second, a multiply-add counted as two.
#include <chrono>
#include <cstdio>
#include <immintrin.h>

int main()
{
    constexpr int Registers = 12, Count = 1000000;
    const __m256d m = _mm256_set1_pd(0.999999), c = _mm256_set1_pd(1e-6);
    double least = 1e300, kept = 0;
    for (int round = 0; round < 60; ++round)
    {
        __m256d r[Registers];
        for (auto& each : r) each = m;
        const auto began = std::chrono::steady_clock::now();
        for (int i = 0; i < Count; ++i)
        {
            // Unrolled whole, so that the array lives in registers; the empty statement keeps the sum from being rearranged over turns.
#pragma GCC unroll 12
            for (int j = 0; j < Registers; ++j)
            {
                r[j] = _mm256_fmadd_pd(r[j], m, c);
                asm volatile("" : "+x"(r[j]));
            }
        }
        const double taken = std::chrono::duration<double, std::nano>(std::chrono::steady_clock::now() - began).count();
        least = taken < least ? taken : least;
        for (auto& each : r) kept += each[0];
    }
    std::printf("peak;C++;%.1f\n", 2.0 * 4 * Registers * Count / least);
    return kept > 0 ? 0 : 1;
}
